import type { Problem } from '../../shared/problem.ts';
import type { QuestionOf } from '../../shared/question.ts';
import { meter } from '../solver/index.ts';
import { problemIn } from './answer/read-states.ts';
import { type Reading, readingText, sameReading } from './answer/volts.ts';
import { measuringCautions } from './ask/cautions.ts';
import { situationOf } from './ask/situation.ts';
import { uncertain } from './check-states.ts';
import type { Kind } from './kind.ts';
import { proposePoints } from './meter-points.ts';
import type { Standpoint } from './solving.ts';
import { timeFor } from './time-expected.ts';

/** As much of a standpoint as a meter needs. */
type Stands = Pick<Standpoint, 'machine' | 'state'>;

/** What the meter shows, to a millivolt. */
export function readingOf(standpoint: Stands, points: readonly [string, string]): Reading {
  const { volts, floating } = meter(standpoint.machine, standpoint.state, points[0], points[1]);
  if (floating) return null;
  return Math.round(volts * 1000) / 1000 + 0;
}

const isAlternating = ({ circuit }: QuestionOf<'meter'>): boolean =>
  circuit.supplies.every(({ current }) => current !== 'DC');

const TITLE = 'Meter';

/** What does the meter read between two points? */
export const meterKind: Kind<'meter'> = {
  kind: 'meter',
  title: TITLE,
  blank: { kind: 'meter' },
  propose({ circuit, scenario, family }, random) {
    const found = proposePoints(circuit, scenario, random);
    return found && { kind: 'meter', circuit, family, ...found };
  },
  check(question, solver): Problem[] {
    const { nodeOf } = solver.machine(question.circuit, question.scenario).plan;
    const missing = question.points.filter((point) => !nodeOf.has(point));
    if (missing.length > 0)
      return missing.map((point) =>
        problemIn(
          'question-unknown-item',
          `There is no terminal ${point}.`,
          'Measure between two terminals of the circuit.',
        ),
      );
    if (question.points[0] === question.points[1])
      return [problemIn('question-asked-twice', 'Both points are the same.', 'Measure between two points.')];
    return uncertain(question, solver);
  },
  ask({ circuit, scenario, points }) {
    const [first, second] = points;
    return {
      title: TITLE,
      situation: situationOf(circuit, scenario),
      task: `A voltmeter is put between ${first} and ${second} (the second is its reference). What does it read?`,
      items: [
        {
          item: 'volts',
          label: `${first} against ${second}`,
          choices: [],
          unit: 'V',
          about: [first, second],
        },
      ],
      how: 'Write the number of volts; or "nothing" where the two points have no common reference. With direct current the sign counts.',
      cautions: measuringCautions(circuit),
    };
  },
  answerBy({ circuit, scenario, points }, solve) {
    const standpoint = solve(circuit, scenario);
    return standpoint && { kind: 'meter', volts: readingOf(standpoint, points) };
  },
  parts(question, answer, right) {
    const truth = right.volts ?? null;
    const part = { item: 'volts', right: readingText(truth), choices: 0 };
    if (answer.volts === undefined) return { parts: [{ ...part, correct: false }], problems: [] };
    const given = answer.volts !== null && isAlternating(question) ? Math.abs(answer.volts) : answer.volts;
    const usable = given === null || Number.isFinite(given);
    return {
      parts: [
        {
          ...part,
          given: usable ? readingText(given) : 'no number',
          correct: usable && sameReading(given, truth, question.tolerance),
        },
      ],
      problems: usable
        ? []
        : [
            problemIn(
              'answer-not-a-number',
              'What was answered is no number.',
              'Answer with a number of volts.',
            ),
          ],
    };
  },
  secondsExpected: ({ circuit, scenario }) => timeFor(circuit, scenario, 2),
};
