/** Why the relays stand as they stand on which something hangs, from the nearest back to the cause. */
import type { LoadTrace } from '../../../shared/solution.ts';
import type { Reason } from '../said.ts';
import { type History, isRelay, mechanismsOn } from './history.ts';
import { ledRound } from './led-round.ts';
import { relayStands } from './standing.ts';

/** What hangs on relays: what was asked, and maybe by which relay it was asked. */
export interface Hanging {
  readonly traces: readonly LoadTrace[];
  /** The relay that was asked about, which isn't a reason of its own. */
  readonly asked?: string;
  /** What its moment is called; by itself the number of acts. */
  readonly moment?: string;
}

/**
 * One statement for each relay whose contacts are on the traces, or on those of its coil, after so many acts; each relay once,
 * with all for which it is a reason.
 */
export function behind(
  history: History,
  after: number,
  { traces, asked, moment = String(after) }: Hanging,
): Reason[] {
  const { mechanisms } = history.machine.plan;
  const found = new Map<string, Reason & { readonly under: string[] }>();
  // Round which stop a relay is fed is a reason of its own, for that relay.
  const past = (mechanism: number, under: string[]): void => {
    const round = ledRound(history, after, mechanism);
    if (!round) return;
    const name = `past ${mechanisms[mechanism]!.id}`;
    const { said, about } = round;
    found.set(name, { said, about, of: { relay: name, moment }, under });
  };
  const tell = (trace: LoadTrace, hanging: string | undefined): void => {
    for (const mechanism of mechanismsOn(history, trace)) {
      const relay = mechanisms[mechanism]!.id;
      if (!isRelay(history, mechanism) || relay === asked) continue;
      const known = found.get(relay);
      const under = hanging === undefined || hanging === asked ? [] : [hanging];
      if (known) {
        // Once a reason for what was asked itself, it is that whatever else it is.
        if (under.length === 0) known.under.length = 0;
        else if (known.under.length > 0 && relay !== hanging) known.under.push(...under);
        continue;
      }
      const { said, about, traces: own } = relayStands(history, after, { item: relay });
      found.set(relay, { said, about, of: { relay, moment }, under });
      past(mechanism, [relay]);
      for (const next of own) tell(next, relay);
    }
  };
  const own = asked === undefined ? undefined : history.machine.mechanismOf.get(asked);
  if (own !== undefined) past(own, []);
  for (const trace of traces) tell(trace, undefined);
  return [...found.values()];
}
