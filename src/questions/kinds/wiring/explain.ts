import type { QuestionOf } from '../../../../shared/question.ts';
import { anatomyOf, deviceOf, parseTerminalRef } from '../../../circuit/index.ts';
import type { HintSaid } from '../../../words/index.ts';
import { tellStates } from '../../explain/explain-states.ts';
import { keyOf, type Sentence } from '../../explain/telling.ts';
import { itemKind } from '../../items.ts';
import type { ExplanationStep } from '../../said.ts';
import { rightSolver } from '../../solving.ts';
import { completed, loadState, workingChoices } from './choices.ts';

type Wiring = QuestionOf<'wiring'>;
type Wanted = Wiring['wanted'][number];

/** What one scenario does to the load in a circuit that is wired through. */
function told(question: Wiring, choice: number, { acts, load }: Wanted): readonly Sentence[] {
  const circuit = completed(question, choice);
  const kind = itemKind(circuit, load) === 'input' ? 'input-states' : 'lamp-states';
  const base = { circuit, scenario: { ...question.scenario, acts }, family: question.family };
  return tellStates({ kind, ...base, asked: [load] }).sentences;
}

/** Legs of one pole: no contact joins them without the common. */
function twoLegs({ circuit }: Wiring, [first, second]: Wiring['choices'][number]): string | undefined {
  const [one, other] = [parseTerminalRef(first)!, parseTerminalRef(second)!];
  const device = deviceOf(circuit, one.device);
  if (!device || one.device !== other.device) return undefined;
  const { contacts } = anatomyOf(device);
  const legs = contacts.filter(
    ({ changeover, to }) => changeover && (to === one.terminal || to === other.terminal),
  );
  return legs.length === 2 && legs[0]!.pole === legs[1]!.pole ? `${device.name}:${legs[0]!.from}` : undefined;
}

/** The right choice gone through scenario by scenario, then what each of the others would do wrong. */
export function explainWiring(question: Wiring): ExplanationStep[] {
  const { solve } = rightSolver();
  const [right = 0] = workingChoices(question, solve);
  const [first, second] = question.choices[right]!;
  const steps: ExplanationStep[] = [{ said: { says: 'connectedTo', first, second }, about: [first, second] }];
  const before = new Set<string>();
  for (const wanted of question.wanted) {
    for (const { said, about } of told(question, right, wanted)) {
      if (before.has(keyOf(said))) continue;
      before.add(keyOf(said));
      steps.push({ said, about });
    }
  }
  question.choices.forEach((choice, index) => {
    if (index === right) return;
    const failed = question.wanted.find(({ acts, load, state }) => {
      const standpoint = solve(completed(question, index), { ...question.scenario, acts });
      return standpoint === undefined || loadState(standpoint, load) !== state;
    });
    if (!failed) return;
    const [first, second] = choice;
    const common = twoLegs(question, choice);
    if (common) {
      steps.push({ said: { says: 'notTwoLegs', first, second, common }, about: [...choice] });
      return;
    }
    const why = told(question, index, failed).findLast(({ about }) => about.includes(failed.load))!.said;
    if (why.says !== 'not')
      steps.push({ said: { says: 'not', first, second, told: why }, about: [...choice] });
  });
  return steps;
}

export const hintWiring = ({ wanted: [first] }: Wiring): HintSaid => ({
  says: 'whichOperated',
  load: first!.load,
  state: { says: first!.state },
});
