/** Contacts wired either way round: which of its two sides is the feeding one can't be told from a terminal's number. */
import type { Circuit, Step } from '../../../../shared/circuit.ts';
import { anatomyOf, deviceOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';

/** Terminals of a contact that are on no other stop than this one. */
function turnable(circuit: Circuit, { device, enter, leave }: Step): boolean {
  const found = deviceOf(circuit, device);
  if (leave === undefined || !found) return false;
  const contact = anatomyOf(found).contacts.find(
    ({ main, from, to }) => !main && [from, to].includes(enter) && [from, to].includes(leave),
  );
  if (!contact) return false;
  const stops = circuit.paths.flatMap(({ steps }) =>
    steps.filter(
      (step) =>
        step.device === device && [step.enter, step.leave].some((each) => each === enter || each === leave),
    ),
  );
  return stops.length === 1;
}

export const turnedContacts = (circuit: Circuit, random: Random): Circuit => ({
  ...circuit,
  paths: circuit.paths.map((path) => ({
    ...path,
    steps: path.steps.map((step) =>
      turnable(circuit, step) && random.chance(0.5)
        ? { ...step, enter: step.leave!, leave: step.enter }
        : step,
    ),
  })),
});
