/** A wiring question with one of its choices carried out, and whether that does what is wanted. */
import type { Circuit, Step } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import { parseTerminalRef } from '../../../circuit/index.ts';
import type { AnswerSaid } from '../../../words/index.ts';
import type { Solve, Standpoint } from '../../solving.ts';

type Wiring = QuestionOf<'wiring'>;

/** A choice as it is answered. */
export const choiceSaid = ([first, second]: Wiring['choices'][number]): AnswerSaid => ({
  says: 'pair',
  first,
  second,
});

const stop = (terminal: string): Step => {
  const place = parseTerminalRef(terminal);
  if (!place) throw new RangeError(`no terminal ${terminal}`);
  return { device: place.device, enter: place.terminal };
};

const kept = new WeakMap<Wiring, Map<number, Circuit>>();

/** The circuit with the loose ends on the two terminals of a choice; of one question always the same object. */
export function completed(question: Wiring, choice: number): Circuit {
  const made = kept.get(question) ?? new Map<number, Circuit>();
  kept.set(question, made);
  const known = made.get(choice);
  if (known) return known;
  const circuit = complete(question, choice);
  made.set(choice, circuit);
  return circuit;
}

function complete({ circuit, ends, choices }: Wiring, choice: number): Circuit {
  const [first, second] = choices[choice]!;
  const sheet = circuit.paths[0]?.sheet ?? 1;
  const wires = [
    [ends[0], first],
    [second, ends[1]],
  ].map((pair) => ({ sheet, steps: pair.map(stop) }));
  return { ...circuit, paths: [...circuit.paths, ...wires] };
}

/** How a load stands, in the words of lamps and inputs; undefined when there is none of that name. */
export const loadState = ({ readings }: Standpoint, load: string): string | undefined =>
  readings.lamps[load] ?? readings.loads[load] ?? readings.inputs[load];

/** Whether a completed circuit does all that is wanted. */
export const satisfied = (
  { scenario, wanted }: Pick<Wiring, 'scenario' | 'wanted'>,
  circuit: Circuit,
  solve: Solve,
): boolean =>
  wanted.every(({ acts, load, state }) => {
    const standpoint = solve(circuit, { ...scenario, acts });
    return standpoint !== undefined && loadState(standpoint, load) === state;
  });

/** Indices of the choices that do what is wanted. */
export const workingChoices = (question: Wiring, solve: Solve): number[] =>
  question.choices.flatMap((_, choice) =>
    satisfied(question, completed(question, choice), solve) ? [choice] : [],
  );
