import type { Problem } from '../../../../shared/problem.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import type { Wanted } from '../../../words/index.ts';
import { actsSaid } from '../../ask/acts-said.ts';
import { isolatingCautions } from '../../ask/cautions.ts';
import { situationOf } from '../../ask/situation.ts';
import { namedItem } from '../../items.ts';
import type { Kind } from '../../kind.ts';
import { luckWithChoices } from '../../luck.ts';
import { questionProblem } from '../../problem-codes.ts';
import type { KindSaid } from '../../said.ts';
import { certain, type Solver } from '../../solving.ts';
import { timeFor } from '../../time-expected.ts';
import { choiceSaid, completed, loadState, workingChoices } from './choices.ts';
import { proposeWiring } from './proposal.ts';

type Wiring = QuestionOf<'wiring'>;

const wantedSaid = ({ circuit }: Wiring, { acts, load, state }: Wiring['wanted'][number]): Wanted => ({
  load: namedItem(circuit, load),
  state: { says: state },
  acts: actsSaid(acts, circuit),
});

function check(question: Wiring, solver: Solver): Problem[] {
  const { nodeOf } = solver.machine(question.circuit, question.scenario).plan;
  const missing = [...new Set([...question.ends, ...question.choices.flat()])].filter(
    (ref) => !nodeOf.has(ref),
  );
  if (missing.length > 0)
    return missing.map((at) => questionProblem({ says: 'question-unknown-item.terminal', at }));
  const at = solver.solve(question.circuit, question.scenario)!;
  const stray = question.wanted.filter(({ load }) => loadState(at, load) === undefined);
  if (stray.length > 0)
    return stray.map(({ load }) => questionProblem({ says: 'question-unknown-item.load', load }));
  const working = workingChoices(question, solver.solve);
  if (working.length !== 1) return [questionProblem({ says: 'question-choices', working: working.length })];
  const circuit = completed(question, working[0]!);
  const unclear = question.wanted.some(
    ({ acts }) => !certain(solver.machine(circuit, question.scenario), { ...question.scenario, acts }),
  );
  return unclear ? [questionProblem({ says: 'question-not-certain.wired' })] : [];
}

/** Which terminals have to be wired so that the circuit does what is stated? */
export const wiring: Kind<'wiring'> = {
  kind: 'wiring',
  blank: { kind: 'wiring' },
  asksWhatIsMeant: true,
  // Conductors are left out of it.
  changesCircuit: true,
  // Which relay is held in by hand would tell which one to wire.
  suits: ({ scenario: { acts } }) => acts.every(({ kind }) => kind !== 'hold'),
  propose: proposeWiring,
  check,
  ask(question) {
    const { circuit, scenario, ends, choices, wanted } = question;
    const [from, to] = ends;
    const besides: KindSaid<'wiring'>[] = [
      { says: 'looseEnds', from, to },
      { says: 'wantedFollows' },
      ...wanted.map(
        (each, index) => ({ says: 'wanted', number: index + 1, ...wantedSaid(question, each) }) as const,
      ),
    ];
    return {
      kind: 'wiring',
      form: 'choice',
      situation: situationOf(circuit, scenario),
      besides,
      task: { says: 'task' } satisfies KindSaid<'wiring'>,
      how: { says: 'how', choices: choices.length } satisfies KindSaid<'wiring'>,
      items: [
        {
          item: 'choice',
          label: { says: 'fromTo', from, to },
          choices: choices.map(choiceSaid),
          about: [...ends],
        },
      ],
      cautions: isolatingCautions(circuit),
    };
  },
  answerBy(question, solve) {
    const working = workingChoices(question, solve);
    return working.length === 1 ? { kind: 'wiring', choice: working[0]! } : undefined;
  },
  parts({ choices }, { choice }, right) {
    const part = { item: 'choice', right: choiceSaid(choices[right.choice!]!), choices: choices.length };
    if (choice === undefined) return { parts: [{ ...part, correct: false }], problems: [] };
    const given = choices[choice];
    return given
      ? { parts: [{ ...part, given: choiceSaid(given), correct: choice === right.choice }], problems: [] }
      : {
          parts: [{ ...part, given: { says: 'choice', number: choice + 1 }, correct: false }],
          problems: [
            questionProblem({
              says: 'answer-no-such-choice.number',
              number: choice + 1,
              of: choices.length,
            }),
          ],
        };
  },
  shownWith: (question, { choice = 0 }) => ({
    circuit: completed(question, choice),
    scenario: { ...question.scenario, acts: question.wanted.at(-1)?.acts ?? [] },
  }),
  loads: ({ wanted }) => [...new Set(wanted.map(({ load }) => load))],
  // What each of its choices makes of the circuit.
  alsoTold: (question) => question.choices.map((_, choice) => () => completed(question, choice)),
  luck: ({ choices }) => luckWithChoices(choices.length),
  secondsExpected: ({ circuit, scenario, wanted, choices }) =>
    timeFor(circuit, { ...scenario, acts: wanted.at(-1)!.acts }, choices.length, wanted.length),
};
