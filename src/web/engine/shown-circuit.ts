/** What of a question is drawn before it is answered. */
import type { Circuit, Path } from '../../../shared/circuit.ts';
import type { Asked, Question } from '../../../shared/question.ts';
import { anatomyOf, deviceOf, parseTerminalRef } from '../../circuit/index.ts';
import { askQuestion } from '../../questions/index.ts';

/** The circuit as it is asked about. Terminals that may be chosen stand on it, with nothing connected to them. */
export function circuitAsked(circuit: Circuit, { form, items }: Asked): Circuit {
  if (form !== 'choice') return circuit;
  const sheet = circuit.paths.at(-1)?.sheet ?? 1;
  const wanted = new Map<string, Set<string>>();
  for (const ref of items.flatMap(({ values }) => values.flatMap((pair) => pair.split(' ')))) {
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

/** Where a question puts its meter. */
export const pointsIn = ({
  form,
  items,
}: {
  readonly form: Asked['form'];
  readonly items: readonly { readonly about: readonly string[] }[];
}): readonly [string, string] | undefined => {
  const [first, second] = items[0]?.about ?? [];
  return form === 'reading' && first !== undefined && second !== undefined ? [first, second] : undefined;
};

export const pointsOf = (question: Question): readonly [string, string] | undefined =>
  pointsIn(askQuestion(question));
