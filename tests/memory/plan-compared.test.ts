/** The plan against other ways of practising, on simulated learners. docs/memory.md has the same figures. */
import { describe, expect, it } from 'vitest';
import { graphOf, skill } from './arbitraries.ts';
import {
  type Course,
  Learner,
  outcome,
  practiseDue,
  practiseMassed,
  practisePlanned,
  practiseSteadily,
} from './simulated-learner.ts';

const LEARNERS = 40;
const graph = graphOf(
  Array.from({ length: 20 }, (_, at) => (at < 4 ? skill(`s${at}`) : skill(`s${at}`, `s${at - 4}`))),
);
const course: Course = { graph, days: 28, questionsADay: 4 };
const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** The same learners, by seed, practising in each way. */
function compare(strength: number) {
  const runs = Array.from({ length: LEARNERS }, (_, seed) => {
    const learner = (): Learner => new Learner(seed + 1, strength);
    const [planned, due, steady, massed] = [learner(), learner(), learner(), learner()];
    const diary = practisePlanned(course, planned);
    const questions = diary.flat().length;
    const dueQuestions = practiseDue({ ...course, questionsADay: 8 }, due).flat().length;
    practiseSteadily(course, steady, questions);
    practiseMassed(course, massed, diary);
    return {
      questions,
      dueQuestions,
      planned: outcome(course, planned),
      due: outcome(course, due),
      steady: outcome(course, steady),
      massed: outcome(course, massed),
    };
  });
  const of = (key: keyof (typeof runs)[number]): number => mean(runs.map((run) => run[key]));
  return {
    questions: of('questions'),
    dueQuestions: of('dueQuestions'),
    planned: of('planned'),
    due: of('due'),
    steady: of('steady'),
    massed: of('massed'),
  };
}

/** strength: the learner's true stability against the model's. Then the mean chance on the day, as measured. */
describe.each([
  { strength: 1, planned: 0.969, due: 0.951, steady: 0.968, massed: 0.811 },
  { strength: 0.6, planned: 0.936, due: 0.925, steady: 0.919, massed: 0.752 },
  { strength: 1.5, planned: 0.984, due: 0.965, steady: 0.987, massed: 0.848 },
])('20 skills in 28 days, learners who keep things $strength times as long as the model has it', (told) => {
  const measured = compare(told.strength);

  it(`planned ${told.planned}: better than in due order, ${told.due}, which asks more questions`, () => {
    expect(measured.planned).toBeCloseTo(told.planned, 2);
    expect(measured.due).toBeCloseTo(told.due, 2);
    expect(measured.planned).toBeGreaterThan(measured.due);
    expect(measured.questions).toBeLessThan(measured.dueQuestions);
  });

  it(`planned ${told.planned}: far better than the same questions massed, ${told.massed}`, () => {
    expect(measured.massed).toBeCloseTo(told.massed, 2);
    expect(measured.planned).toBeGreaterThan(measured.massed + 0.1);
  });

  it(`planned ${told.planned}: at least as good as the same number in equal parts, due ones first, ${told.steady}`, () => {
    expect(measured.steady).toBeCloseTo(told.steady, 2);
    expect(measured.planned).toBeGreaterThan(measured.steady - 0.01);
  });
});
