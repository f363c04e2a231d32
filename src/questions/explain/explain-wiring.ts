import type { ExplanationStep, QuestionOf } from '../../../shared/question.ts';
import { anatomyOf, deviceOf, parseTerminalRef } from '../../circuit/index.ts';
import { itemKind } from '../items.ts';
import { rightSolver } from '../solving.ts';
import { completed, loadState, workingChoices } from '../wiring-choices.ts';
import { tellStates } from './explain-states.ts';

type Wiring = QuestionOf<'wiring'>;
type Wanted = Wiring['wanted'][number];

const pairText = ([first, second]: Wiring['choices'][number]): string => `${first} and ${second}`;

/** What one scenario does to the load in a circuit that is wired through. */
function told(question: Wiring, choice: number, { acts, load }: Wanted): ExplanationStep[] {
  const circuit = completed(question, choice);
  const kind = itemKind(circuit, load) === 'input' ? 'input-states' : 'lamp-states';
  const base = { circuit, scenario: { ...question.scenario, acts }, family: question.family };
  return tellStates({ kind, ...base, asked: [load] }).sentences.map(({ text, about }) => ({
    text,
    about: [...about],
  }));
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
  const pair = question.choices[right]!;
  const steps: ExplanationStep[] = [{ text: `Connected to ${pairText(pair)}:`, about: [...pair] }];
  const said = new Set<string>();
  for (const wanted of question.wanted) {
    for (const step of told(question, right, wanted)) {
      if (said.has(step.text)) continue;
      said.add(step.text);
      steps.push(step);
    }
  }
  question.choices.forEach((choice, index) => {
    if (index === right) return;
    const failed = question.wanted.find(({ acts, load, state }) => {
      const standpoint = solve(completed(question, index), { ...question.scenario, acts });
      return standpoint === undefined || loadState(standpoint, load) !== state;
    });
    if (!failed) return;
    const common = twoLegs(question, choice);
    const why = common
      ? `no contact joins the two legs of a pole; the common ${common} is always used`
      : lowered(
          told(question, index, failed).findLast(({ about }) => about.includes(failed.load))?.text ?? '',
        );
    steps.push({ text: `Not ${pairText(choice)}: ${why.replace(/\.$/, '')}.`, about: [...choice] });
  });
  return steps;
}

/** A sentence that goes on after a colon; designations keep their capitals. */
const lowered = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

export function hintWiring({ wanted: [first] }: Wiring): string {
  const { load, state } = first!;
  const stands = state === '0' || state === '1' ? `is to read ${state}` : `is to be ${state}`;
  return `Ask first which relays have operated when ${load} ${stands}, and which in the other cases. Look for a contact that is closed in the one and open in the other.`;
}
