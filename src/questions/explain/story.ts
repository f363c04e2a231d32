/** What happens in a scenario, told from the solver's trace and nothing else: the start, each act, and what follows it. */
import type { Act } from '../../../shared/scenario.ts';
import type { LoadTrace } from '../../../shared/solution.ts';
import { actSaid } from '../../circuit/index.ts';
import type { ExplainingSaid, Hop, ReasonSaid } from '../../words/index.ts';
import type { ExplanationStep } from '../said.ts';
import { plain } from './feed.ts';
import { type History, isRelay, type Stage } from './history.ts';
import { whyMoved } from './relay-why.ts';
import { aboutHops, hopOf } from './wording.ts';

/** A statement with what it was read from, to point at. */
export function stepOf<S extends ExplainingSaid>(
  said: S,
  about: readonly string[],
  traces: readonly LoadTrace[] = [],
): ExplanationStep & { readonly said: S } {
  const hops = traces.flatMap(({ path, stoppedBy }) => [...path, ...stoppedBy]);
  return { said, about: [...new Set([...about, ...aboutHops(hops)])] };
}

/** In a story the contacts that a path takes have been told of when they moved. */
const inShort = (reason: ReasonSaid): ReasonSaid =>
  'feed' in reason ? { ...reason, feed: plain(reason.feed) } : reason;

/** Terminals that conductors come to, `-K1:11`. */
const wiredOf = ({ circuit }: History): ReadonlySet<string> =>
  new Set(
    circuit.paths.flatMap(({ steps }) =>
      steps.flatMap(({ device, enter, leave }) => [
        `${device}:${enter}`,
        ...(leave === undefined ? [] : [`${device}:${leave}`]),
      ]),
    ),
  );

class Story {
  private readonly history: History;
  private readonly relevant: ReadonlySet<number>;
  private readonly wired: ReadonlySet<string>;

  constructor(history: History, relevant: ReadonlySet<number>) {
    this.history = history;
    this.relevant = relevant;
    this.wired = wiredOf(history);
  }

  /** Contacts of a mechanism that wires come to on both sides and that have just become closed, or open. */
  private contacts(mechanism: number, after: number, closed: boolean): Hop[] {
    const { machine, stages } = this.history;
    const position = (mask: number): number => 31 - Math.clz32(mask);
    const now = position(stages[after]!.state.at[mechanism]!);
    const before = after === 0 ? 0 : position(stages[after - 1]!.state.at[mechanism]!);
    return machine.plan.switches.flatMap(({ mechanism: mine, device, from, to, closedIn, fixed }) => {
      if (mine !== mechanism || fixed || closedIn.includes(now) === closedIn.includes(before)) return [];
      if (!this.wired.has(`${device}:${from}`) || !this.wired.has(`${device}:${to}`)) return [];
      return closedIn.includes(now) === closed ? [hopOf({ device, enter: from, leave: to })] : [];
    });
  }

  /** Contacts of a mechanism that have just opened and closed; none where none of it is wired. */
  private contactsMoved(mechanisms: readonly number[], after: number): { breaks: Hop[]; makes: Hop[] } {
    const all = (closed: boolean): Hop[] =>
      mechanisms.flatMap((mechanism) => this.contacts(mechanism, after, closed));
    return { breaks: all(false), makes: all(true) };
  }

  /** An act, and what it moves by itself. */
  private acted({ after, act, moved, state }: Stage & { readonly act: Act }, relays: number): ExplainingSaid {
    const { machine, circuit } = this.history;
    const driven = (drive: string): number[] =>
      moved.filter(
        (mechanism) =>
          machine.plan.mechanisms[mechanism]!.drive === drive && !state.tripped.includes(mechanism),
      );
    const { breaks, makes } = this.contactsMoved(driven('act'), after);
    const { breaks: opens, makes: closes } = this.contactsMoved(driven('feed'), after);
    const said = { number: after, act: actSaid(act, circuit) };
    if (breaks.length + makes.length + opens.length + closes.length > 0)
      return { says: 'act', ...said, breaks, makes, opens, closes };
    return { says: relays === 0 && moved.length === 0 ? 'actMovesNothing' : 'actAlone', ...said };
  }

  private relayMoved(mechanism: number, after: number): ExplanationStep {
    const { machine, stages } = this.history;
    const { id, device } = machine.plan.mechanisms[mechanism]!;
    const operated = stages[after]!.state.at[mechanism] === 2;
    const why = whyMoved(this.history, after, mechanism);
    return stepOf(
      {
        says: operated ? 'operates' : 'releases',
        relay: id,
        atStart: after === 0,
        why: inShort(why.reason),
        ...this.contactsMoved([mechanism], after),
      },
      [device],
      why.traces,
    );
  }

  /** The start, or one act: what it does, and which relays follow. */
  stage(stage: Stage): ExplanationStep[] {
    const { after, act, moved } = stage;
    const relays = moved.filter(
      (mechanism) => isRelay(this.history, mechanism) && this.relevant.has(mechanism),
    );
    const steps: ExplanationStep[] = [];
    if (act)
      steps.push(stepOf(this.acted({ ...stage, act }, relays.length), 'device' in act ? [act.device] : []));
    for (const mechanism of stage.state.tripped) {
      if (!moved.includes(mechanism)) continue;
      const { id, device } = this.history.machine.plan.mechanisms[mechanism]!;
      steps.push(stepOf({ says: 'trips', device: id }, [device]));
    }
    return [...steps, ...relays.map((mechanism) => this.relayMoved(mechanism, after))];
  }
}

/** The whole of it in its order, without relays that nothing asked hangs on. */
export function storyOf(history: History, relevant: ReadonlySet<number>): ExplanationStep[] {
  const story = new Story(history, relevant);
  return history.stages.flatMap((stage) => story.stage(stage));
}
