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

const HAPPENED: Readonly<Record<Happening, (circuit: Circuit, scenario: Scenario) => boolean>> = {
  fault: (_, { faults }) => faults.length > 0,
  loss: (circuit, { acts }) => acts.some((act) => loses(circuit, act)),
  trip: (_, { acts }) => acts.some(({ kind }) => kind === 'trip'),
};

/** Whether one of these happens; any scenario does where nothing is asked for. */
export const oneHappens = (
  wanted: readonly Happening[] | undefined,
  { circuit, scenario }: { readonly circuit: Circuit; readonly scenario: Scenario },
): boolean => wanted === undefined || wanted.some((each) => HAPPENED[each](circuit, scenario));
