/** Contacts wired either way round: which of its two sides is the feeding one can't be told from a terminal's number. */
import type { Circuit, Step } from '../../../../shared/circuit.ts';
import { contactOf } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';

/** Terminals of a contact that are on no other stop than this one. */
function turnable(circuit: Circuit, step: Step): boolean {
  const { device, enter, leave } = step;
  const contact = contactOf(circuit, step);
  if (!contact || contact.main) return false;
  const stops = circuit.paths.flatMap(({ steps }) =>
    steps.filter(
      (each) =>
        each.device === device && [each.enter, each.leave].some((end) => end === enter || end === leave),
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
