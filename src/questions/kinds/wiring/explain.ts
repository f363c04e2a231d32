import type { QuestionOf } from '../../../../shared/question.ts';
import type { Scenario } from '../../../../shared/scenario.ts';
import { anatomyOf, deviceOf, parseTerminalRef } from '../../../circuit/index.ts';
import type { ExplainingSaid, HintSaid } from '../../../words/index.ts';
import { decisionOf } from '../../explain/explain-states.ts';
import { historyOf, relevantTo } from '../../explain/history.ts';
import { loadsOf } from '../../explain/standing.ts';
import { storyOf } from '../../explain/story.ts';
import { itemKind } from '../../items.ts';
import type { Explanation } from '../../said.ts';
import { rightSolver } from '../../solving.ts';
import { choiceSaid, completed, loadState, workingChoices } from './choices.ts';

type Wiring = QuestionOf<'wiring'>;
type Wanted = Wiring['wanted'][number];

/** What one scenario does to the load in a circuit that is wired through. */
function told(question: Wiring, choice: number, { acts, load }: Wanted, moment = '') {
  const circuit = completed(question, choice);
  const scenario: Scenario = { ...question.scenario, acts };
  const history = historyOf(circuit, scenario);
  const after = acts.length;
  const asked = loadsOf(history, load).map((id) => ({ load: id, after }));
  const kind = itemKind(circuit, load)!;
  return {
    ...decisionOf(history, { key: load, item: load, kind, after }, false, moment),
    story: storyOf(history, relevantTo(history, asked)),
  };
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

/** What a wrong choice would do, in the first of the scenarios in which it doesn't do what is wanted. */
function whyNot(question: Wiring, choice: number, failed: Wanted): ExplainingSaid {
  const [first, second] = question.choices[choice]!;
  const common = twoLegs(question, [first, second]);
  if (common) return { says: 'notTwoLegs', first, second, common };
  const number = question.wanted.indexOf(failed) + 1;
  return { says: 'not', first, second, number, told: told(question, choice, failed).said };
}

/** The right choice held against each thing stated; what each of the others would do wrong. */
export function explainWiring(question: Wiring): Explanation {
  const { solve } = rightSolver();
  const [right = 0] = workingChoices(question, solve);
  const [first, second] = question.choices[right]!;
  const each = question.wanted.map((wanted, index) => told(question, right, wanted, String(index)));
  const instead = question.choices.flatMap((choice, index) => {
    const failed = question.wanted.find(({ acts, load, state }) => {
      const standpoint = solve(completed(question, index), { ...question.scenario, acts });
      return standpoint === undefined || loadState(standpoint, load) !== state;
    });
    if (!failed) return [];
    const step = { said: whyNot(question, index, failed), about: [...choice] };
    return [{ given: choiceSaid(choice), step }];
  });
  const connected: ExplainingSaid = { says: 'connectedTo', first, second };
  return {
    decides: [
      {
        item: 'choice',
        said: connected,
        brief: connected,
        about: [first, second],
        behind: each.flatMap(({ said, about, behind }, index) => [
          { said: { says: 'wanted' as const, number: index + 1, told: said }, about },
          ...behind,
        ]),
        instead,
      },
    ],
    // Of the last, which is also what is shown run through with the mark.
    story: [...each.at(-1)!.story, ...instead.map(({ step }) => step)],
  };
}

export const hintWiring = ({ wanted: [first] }: Wiring): HintSaid => ({
  says: 'whichOperated',
  load: first!.load,
  state: { says: first!.state },
});
