/** Evidence of what somebody can do, made up on the learner's own device. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import type { IssuedQuestion, ProofsWanted } from '../../shared/issued.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { issuedIn, passedOverFor, questionIssued } from '../../src/practice/index.ts';
import { ISSUED_LASTS } from '../../src/store/index.ts';
import { CLOSES, course, HOUR } from '../homework/course.ts';
import { answersTo, type ClassServing, classServing, type Person } from '../server/homework/class-serving.ts';
import { answerWith } from '../support/answers.ts';
import { answerIssued } from '../support/issued-answers.ts';

const DAY = 24 * HOUR;
const SKILL = 'make-contact';
let serving: ClassServing;
let learner: Person;
let other: Person;

beforeEach(async () => {
  serving = await classServing(2);
  [learner, other] = serving.learners as [Person, Person];
});
afterEach(() => serving.end());

const issuedTo = async (person: Person): Promise<readonly IssuedQuestion[]> =>
  (await person.call(homeworkRoutes.issueQuestions, { body: { have: {} } })).issued;

/** As many right answers to issued questions as prove a skill, of whatever kind they are. */
const ENOUGH = 8;

async function answersOf(
  person: Person,
  count: number,
  at = serving.clock.now,
): Promise<readonly AnswerRecord[]> {
  const seen = new Set<string>();
  return (await issuedTo(person))
    .filter(({ skill }) => skill === SKILL)
    .slice(0, count)
    .map((issue, number) => {
      const answer = answerIssued(course, issue, { id: `a${number}`, learner: person.id, at, seen });
      seen.add(answer.circuit);
      return answer;
    });
}
const enough = (person: Person): Promise<readonly AnswerRecord[]> => answersOf(person, ENOUGH);
const two = async (person: Person): Promise<readonly [AnswerRecord, AnswerRecord]> =>
  (await answersOf(person, 2)) as [AnswerRecord, AnswerRecord];

const send = async (person: Person, answers: readonly AnswerRecord[]) =>
  (await person.call(apiRoutes.keepAnswers, { body: { answers } })).results.map(({ result }) => result);

async function cellOf(person: Person, skill = SKILL, proofs: ProofsWanted = 'any') {
  const { matrix } = await serving.tutor.call(homeworkRoutes.competence, {
    params: { class: serving.classId },
    query: `?proofs=${proofs}`,
  });
  const column = matrix.skills.findIndex(({ id }) => id === skill);
  return matrix.rows.find(({ person: id }) => id === person.id)!.cells[column]!;
}

/** Lets the time of what was issued pass; everybody stays signed in over it. */
async function untilTheyEnd(): Promise<void> {
  serving.clock.now += ISSUED_LASTS - HOUR;
  for (const person of [learner, serving.tutor]) await person.call(apiRoutes.settings);
  serving.clock.now += HOUR;
}

const NOTHING = { kind: 'not-yet', begun: false };

describe('an answer to a question that was issued', () => {
  it('proves what it shows, once there are enough of them, from when they were given', async () => {
    const answers = await enough(learner);
    serving.clock.now += HOUR;
    expect(new Set(await send(learner, answers.slice(0, 2)))).toEqual(new Set(['kept']));
    expect(await cellOf(learner)).toEqual({ kind: 'not-yet', begun: true });
    expect(new Set(await send(learner, answers))).toEqual(new Set(['already', 'kept']));
    expect(await cellOf(learner)).toMatchObject({ kind: 'held', provenAt: serving.clock.now - HOUR });
  });

  it('proves it also by a clock that is some hours wrong, and never before it was issued or after it came', async () => {
    const answers = await enough(learner);
    const from = serving.clock.now;
    serving.clock.now += HOUR;
    const early = answers.slice(0, 1).map((one) => ({ ...one, at: from - 5 * HOUR }));
    const late = answers.slice(1).map((one) => ({ ...one, at: serving.clock.now + 5 * HOUR }));
    await send(learner, [...early, ...late]);
    expect(await cellOf(learner)).toMatchObject({ kind: 'held', provenAt: serving.clock.now });
    const proofs = await serving.store.proofsOf(learner.id);
    expect(proofs.map(({ at, source }) => [at, source])).toEqual([
      [from, 'issued'],
      ...late.map(() => [serving.clock.now, 'issued']),
    ]);
  });

  it('may pass over circuits that its learner has seen', async () => {
    const issues = (await issuedTo(learner)).filter(({ skill }) => skill === SKILL);
    const [first, second] = issues;
    const { recipes } = course.skills.get(SKILL)!;
    const at = serving.clock.now;
    // What would be put first by the second one was answered before, as somebody's own practice.
    const passed = questionIssued(recipes, second!, new Set())!;
    const own = answerIssued(course, second!, { id: 'own', learner: learner.id, at });
    await send(learner, [{ ...own, question: { ...own.question, seed: 'my own' } }]);
    const seen = new Set([passed.circuit]);
    const one = answerIssued(course, second!, { id: 'one', learner: learner.id, at, seen });
    expect(issuedIn(one.question)!.candidate).toBeGreaterThan(0);
    seen.add(one.circuit);
    await send(learner, [one]);
    expect((await serving.store.proofsOf(learner.id)).map(({ id }) => id)).toEqual(['one']);
    const others = [first!, ...issues.slice(2)].flatMap((issue, number) => {
      if (!questionIssued(recipes, issue, seen)) return [];
      const other = answerIssued(course, issue, { id: `b${number}`, learner: learner.id, at, seen });
      seen.add(other.circuit);
      return [other];
    });
    await send(learner, others);
    expect(await cellOf(learner)).toMatchObject({ kind: 'held' });
  });
});

describe('what proves nothing, and is kept', () => {
  const attacks: Readonly<Record<string, () => Promise<readonly AnswerRecord[]>>> = {
    'questions of one’s own making, dated back by most of a year': async () =>
      [...course.skills.keys()].flatMap((skill) =>
        [1, 2].map((number) => ({
          ...answerWith({
            id: `${skill}-${number}`,
            at: serving.clock.now - 340 * DAY,
            learner: learner.id,
            skill,
            circuit: `${skill}-${number}`,
          }),
        })),
      ),
    'issued questions answered long before they were issued': async () =>
      (await two(learner)).map((one) => ({ ...one, at: serving.clock.now - 340 * DAY })),
    'issued questions answered in the future': async () =>
      (await two(learner)).map((one) => ({ ...one, at: serving.clock.now + 2 * DAY })),
    'issued questions whose time has passed': async () => {
      const pair = await two(learner);
      await untilTheyEnd();
      return pair;
    },
    'questions that were issued to somebody else': async () =>
      (await two(other)).map((one) => ({ ...one, learner: learner.id })),
    'issued questions said to be of another skill': async () =>
      (await two(learner)).map((one) => ({ ...one, skill: 'seal-in' })),
    'an easier question under the name of the issued one': async () =>
      (await two(learner)).map(({ question, ...one }) => {
        const easy = answerWith({ id: one.id, at: one.at, learner: learner.id, skill: SKILL });
        return { ...easy, question: { ...easy.question, seed: question.seed } };
      }),
    'another number of the same row, though nothing of it was seen': async () => {
      const { recipes } = course.skills.get(SKILL)!;
      return (await two(learner)).map((one, index) => {
        const { id } = issuedIn(one.question)!;
        for (let number = 1; ; number++) {
          const issue = { id, skill: SKILL, reviews: index, issuedAt: 0, until: 0 };
          const skipped = new Set<string>();
          for (let passed = 0; passed < number; passed++) {
            const made = questionIssued(recipes, issue, skipped);
            if (made) skipped.add(made.circuit);
          }
          const manner = { id: one.id, learner: learner.id, at: one.at, seen: skipped };
          const later = answerIssued(course, issue, manner);
          if (passedOverFor(recipes, issue, later.question)?.length) return later;
        }
      });
    },
  };
  for (const [name, attack] of Object.entries(attacks))
    it(name, async () => {
      const records = await attack();
      expect(new Set(await send(learner, records))).toEqual(new Set(['kept']));
      expect(await serving.store.proofsOf(learner.id)).toEqual([]);
      for (const skill of course.skills.keys()) expect(await cellOf(learner, skill)).toEqual(NOTHING);
      expect((await learner.call(apiRoutes.answers)).last).toBe(records.length);
    });

  it('one issued question twice', async () => {
    const [one] = await two(learner);
    await send(learner, [one, { ...one, id: 'again' }]);
    await send(learner, [{ ...one, id: 'and again' }]);
    expect(await serving.store.proofsOf(learner.id)).toHaveLength(1);
    expect(await cellOf(learner)).toEqual({ kind: 'not-yet', begun: true });
  });

  it('one issued question twice at the same moment', async () => {
    const [one] = await two(learner);
    await Promise.all(
      Array.from({ length: 8 }, (_, number) => send(learner, [{ ...one, id: `race-${number}` }])),
    );
    expect(await serving.store.proofsOf(learner.id)).toHaveLength(1);
  });

  it('an answer in the place of one to homework', async () => {
    const { set } = await serving.issued({
      skills: [SKILL],
      items: 2,
      attempts: 1,
      review: 'after-submitting',
    });
    const paper = await learner.call(homeworkRoutes.beginPaper, { params: { set: set.id } });
    const [one] = await two(learner);
    expect(await send(learner, [{ ...one, id: `${paper.id}-0` }])).toEqual(['refused']);
    const answers = await answersTo(serving, paper, 'blank');
    const params = { paper: paper.id };
    await learner.call(homeworkRoutes.saveAnswers, { params, body: { answers } });
    await learner.call(homeworkRoutes.submitPaper, { params });
    await learner.call(homeworkRoutes.reviewPaper, { params });
    expect(await cellOf(learner)).toEqual(NOTHING);
  });
});

describe('time that the device says a question takes', () => {
  it('counts for nothing: what this server expects does', async () => {
    const [one] = await two(learner);
    await send(learner, [{ ...one, attempt: { ...one.attempt, secondsExpected: 100_000 } }]);
    const [proof] = await serving.store.proofsOf(learner.id);
    expect(proof!.attempt.secondsExpected).toBe(one.attempt.secondsExpected);
  });
});

describe('a supply of questions', () => {
  it('is no choice of the easiest: so many of a skill wait for an answer and no more', async () => {
    const all = [];
    for (let asked = 0; asked < 6; asked++) all.push(...(await issuedTo(learner)));
    const skills = all.map(({ skill }) => skill);
    // Of skills that can't come next yet there are none.
    expect([...new Set(skills)]).toEqual([SKILL, 'status-lamps']);
    for (const of of new Set(skills)) expect(skills.filter((skill) => skill === of)).toHaveLength(24);
    await untilTheyEnd();
    expect(await issuedTo(learner)).not.toEqual([]);
  });
});

describe('a tutor who asks for supervised proofs only', () => {
  async function homework(supervised: boolean): Promise<void> {
    const wish = { skills: [SKILL], items: 5, attempts: 1, review: 'after-submitting', supervised };
    const { set } = await serving.issued(wish);
    const paper = await learner.call(homeworkRoutes.beginPaper, { params: { set: set.id } });
    const answers = await answersTo(serving, paper, 'right');
    const params = { paper: paper.id };
    await learner.call(homeworkRoutes.saveAnswers, { params, body: { answers } });
    await learner.call(homeworkRoutes.submitPaper, { params });
  }

  it('gets those of sets that were sat under supervision, and no others', async () => {
    await homework(false);
    expect(await cellOf(learner)).toMatchObject({ kind: 'held' });
    await send(learner, await two(learner));
    expect(await cellOf(learner, SKILL, 'supervised')).toEqual(NOTHING);
    await homework(true);
    expect(await cellOf(learner, SKILL, 'supervised')).toMatchObject({ kind: 'held' });
    expect(serving.clock.now).toBeLessThan(CLOSES);
  });
});
