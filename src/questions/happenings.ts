/** What goes wrong in a scenario. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Happening, Scenario } from '../../shared/scenario.ts';
import { anatomyOf, deviceOf } from '../circuit/index.ts';

const feeds = (circuit: Circuit, name: string): boolean => {
  const device = deviceOf(circuit, name);
  return device !== undefined && anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed');
};

/** Whether an act takes a supply away, or what leads on from one. */
export const loses = (circuit: Circuit, act: Act): boolean =>
  act.kind === 'fail' || (act.kind === 'open' && feeds(circuit, act.device));

/** Whether a later act puts right what one has taken away. */
const putsRight = (lost: Act, later: Act): boolean =>
  (lost.kind === 'fail' && later.kind === 'restore' && later.supply === lost.supply) ||
  (lost.kind === 'open' && later.kind === 'close' && later.device === lost.device);

const HAPPENED: Readonly<
  Record<Happening, (circuit: Circuit, scenario: Scenario, eachAsked: boolean) => boolean>
> = {
  fault: (_, { faults }) => faults.length > 0,
  // Put right before anything is asked it mostly is as if it had never been.
  loss: (circuit, { acts }, eachAsked) =>
    acts.some(
      (act, index) =>
        loses(circuit, act) && (eachAsked || !acts.slice(index + 1).some((later) => putsRight(act, later))),
    ),
  trip: (_, { acts }) => acts.some(({ kind }) => kind === 'trip'),
};

/**
 * Whether one of these happens; any scenario does where nothing is asked for.
 *
 * @param eachAsked - whether something is asked after each act, and not in the end alone
 */
export const oneHappens = (
  wanted: readonly Happening[] | undefined,
  { circuit, scenario }: { readonly circuit: Circuit; readonly scenario: Scenario },
  eachAsked: boolean,
): boolean => wanted === undefined || wanted.some((each) => HAPPENED[each](circuit, scenario, eachAsked));
