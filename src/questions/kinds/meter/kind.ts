import type { Problem } from '../../../../shared/problem.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import { meter } from '../../../solver/index.ts';
import { measuringCautions } from '../../ask/cautions.ts';
import { situationOf } from '../../ask/situation.ts';
import { uncertain } from '../../check-states.ts';
import type { Kind } from '../../kind.ts';
import { luckWithReading } from '../../luck.ts';
import { questionProblem } from '../../problem-codes.ts';
import type { KindSaid } from '../../said.ts';
import { rightSolver, type Standpoint } from '../../solving.ts';
import { timeFor } from '../../time-expected.ts';
import { knownReadings } from './dirty.ts';
import { proposePoints } from './points.ts';
import { type Reading, readingSaid, sameReading } from './volts.ts';

/** As much of a standpoint as a meter needs. */
type Stands = Pick<Standpoint, 'machine' | 'state'>;

/** What the meter shows, to a millivolt. */
export function readingOf(standpoint: Stands, points: readonly [string, string]): Reading {
  const { volts, floating } = meter(standpoint.machine, standpoint.state, points[0], points[1]);
  if (floating) return null;
  return Math.round(volts * 1000) / 1000 + 0;
}

/** Readings that are told, so that what a dirty contact takes can be worked out. */
function toldReadings({ circuit, scenario }: QuestionOf<'meter'>): KindSaid<'meter'>[] {
  if (!scenario.faults.some(({ kind }) => kind === 'dirty')) return [];
  const standpoint = rightSolver().solve(circuit, scenario)!;
  return knownReadings(scenario, standpoint).map(
    ({ points: [first, second], volts }): KindSaid<'meter'> => ({ says: 'known', first, second, volts }),
  );
}

const isAlternating = ({ circuit }: QuestionOf<'meter'>): boolean =>
  circuit.supplies.every(({ current }) => current !== 'DC');

/** What does the meter read between two points? */
export const meterKind: Kind<'meter'> = {
  kind: 'meter',
  blank: { kind: 'meter' },
  // Contacts are turned round in it.
  changesCircuit: true,
  propose({ circuit, scenario, family }, random, solver) {
    const found = proposePoints(circuit, scenario, random, solver);
    return found && { kind: 'meter', family, ...found };
  },
  check(question, solver): Problem[] {
    const { nodeOf } = solver.machine(question.circuit, question.scenario).plan;
    const missing = question.points.filter((point) => !nodeOf.has(point));
    if (missing.length > 0)
      return missing.map((at) => questionProblem({ says: 'question-unknown-item.point', at }));
    if (question.points[0] === question.points[1])
      return [questionProblem({ says: 'question-asked-twice.points' })];
    return uncertain(question, solver);
  },
  ask(question) {
    const { circuit, scenario, points } = question;
    const [first, second] = points;
    return {
      kind: 'meter',
      form: 'reading',
      situation: situationOf(circuit, scenario),
      besides: toldReadings(question),
      task: { says: 'task', first, second } satisfies KindSaid<'meter'>,
      how: { says: 'how' } satisfies KindSaid<'meter'>,
      items: [
        {
          item: 'volts',
          label: { says: 'against', first, second },
          choices: [],
          unit: 'V',
          about: [first, second],
        },
      ],
      cautions: measuringCautions(circuit),
    };
  },
  answerBy({ circuit, scenario, points }, solve) {
    const standpoint = solve(circuit, scenario);
    return standpoint && { kind: 'meter', volts: readingOf(standpoint, points) };
  },
  parts(question, answer, right) {
    const truth = right.volts ?? null;
    const part = { item: 'volts', right: readingSaid(truth), choices: 0 };
    if (answer.volts === undefined) return { parts: [{ ...part, correct: false }], problems: [] };
    const given = answer.volts !== null && isAlternating(question) ? Math.abs(answer.volts) : answer.volts;
    const usable = given === null || Number.isFinite(given);
    return {
      parts: [
        {
          ...part,
          given: usable ? readingSaid(given) : { says: 'noNumber' },
          correct: usable && sameReading(given, truth, question.tolerance),
        },
      ],
      problems: usable ? [] : [questionProblem({ says: 'answer-not-a-number.given' })],
    };
  },
  luck: luckWithReading,
  secondsExpected: ({ circuit, scenario }) => timeFor(circuit, scenario, 2),
};
