/** What of a question is drawn: for a wiring, the poles to choose from before it is answered, and the whole afterwards. */
import type { Circuit, Path } from '../../../shared/circuit.ts';
import type { Question } from '../../../shared/question.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import { anatomyOf, deviceOf, parseTerminalRef } from '../../circuit/index.ts';
import { completed, rightAnswer } from '../../questions/index.ts';

/** The circuit as it is asked about. Terminals that may be chosen stand on it, with nothing connected to them. */
export function circuitAsked(question: Question): Circuit {
  const { circuit } = question;
  if (question.kind !== 'wiring') return circuit;
  const sheet = circuit.paths.at(-1)?.sheet ?? 1;
  const wanted = new Map<string, Set<string>>();
  for (const ref of question.choices.flat()) {
    const place = parseTerminalRef(ref);
    if (place) wanted.set(place.device, (wanted.get(place.device) ?? new Set()).add(place.terminal));
  }
  const drawn = new Set(
    circuit.paths.flatMap(({ steps }) =>
      steps.map(({ device, enter, leave }) => `${device} ${[enter, leave].sort().join()}`),
    ),
  );
  const poles = [...wanted].flatMap(([name, terminals]) => {
    const device = deviceOf(circuit, name);
    const contacts = device ? anatomyOf(device).contacts : [];
    const asked = new Set(
      contacts.filter(({ from, to }) => terminals.has(from) || terminals.has(to)).map(({ pole }) => pole),
    );
    return contacts
      .filter(({ pole, from, to }) => asked.has(pole) && !drawn.has(`${name} ${[from, to].sort().join()}`))
      .map(({ from, to }): Path => ({ sheet, steps: [{ device: name, enter: from, leave: to }] }));
  });
  return { ...circuit, paths: [...circuit.paths, ...poles] };
}

/** The circuit and what is done to it, as they are shown with the mark: a wiring connected rightly, in its last state. */
export function circuitMarked(question: Question): { circuit: Circuit; scenario: Scenario } {
  const { circuit, scenario } = question;
  if (question.kind !== 'wiring') return { circuit, scenario };
  const right = rightAnswer(question);
  const choice = right.kind === 'wiring' ? (right.choice ?? 0) : 0;
  return {
    circuit: completed(question, choice),
    scenario: { ...scenario, acts: question.wanted.at(-1)?.acts ?? [] },
  };
}
