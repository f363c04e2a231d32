/** Homework as a learner meets it: opened, begun, saved, handed in, looked through. */
import { afterEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../../shared/api.ts';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import { CLOSES, HOUR, OPENS } from '../../homework/course.ts';
import { answersTo, type ClassServing, classServing, type Person } from './class-serving.ts';

let serving: ClassServing;
afterEach(() => serving.end());

const {
  beginPaper,
  paper: viewPaper,
  saveAnswers,
  submitPaper,
  reviewPaper,
  askHint,
  myHomework,
} = homeworkRoutes;

const begun = (learner: Person, set: string) => learner.call(beginPaper, { params: { set } });

async function saved(learner: Person, paper: { id: string }, manner: 'right' | 'blank' = 'right') {
  const answers = await answersTo(serving, paper, manner);
  return learner.call(saveAnswers, { params: { paper: paper.id }, body: { answers } });
}

describe('a set', () => {
  it('is seen by its learners when it is issued, and told nothing of before it opens', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    serving.clock.now = OPENS - 1;
    const draft = await serving.tutor.call(homeworkRoutes.draftHomework, {
      params: { class: serving.classId },
      body: {
        title: 'Week 40',
        skills: ['make-contact'],
        items: 2,
        level: 'small',
        opensAt: OPENS,
        closesAt: CLOSES,
      },
    });
    const params = { set: draft.set.id };
    expect((await learner!.call(myHomework)).sets).toEqual([]);
    await learner!.refused(beginPaper, { params }, 'no-such-thing');
    await serving.tutor.call(homeworkRoutes.issueHomework, { params });
    await serving.tutor.call(homeworkRoutes.prepareHomework, { params });
    const { sets } = await learner!.call(myHomework);
    expect(sets).toMatchObject([{ title: 'Week 40', state: 'before', mayBegin: false, attempts: [] }]);
    expect(JSON.stringify(sets)).not.toContain('make-contact');
    await learner!.refused(beginPaper, { params }, 'not-open');
    // A paper that was made already is nobody's to see yet.
    const [made] = await serving.store.homework.papersOf(learner!.id);
    await learner!.refused(viewPaper, { params: { paper: made!.id } }, 'no-such-thing');
    serving.clock.now = OPENS;
    expect((await begun(learner!, draft.set.id)).id).toBe(made!.id);
  });

  it('stands with the others by what is urgent: open and closing first, then what comes, then what closed last', async () => {
    serving = await classServing(1);
    const [learner] = serving.learners;
    const times: Readonly<Record<string, readonly [from: number, until: number]>> = {
      'closed long ago': [-9, -5],
      'open for long': [-1, 90],
      'comes later': [50, 90],
      'closed just now': [-9, -1],
      'closes next': [-2, 3],
      'comes soon': [2, 99],
    };
    for (const [title, [from, until]] of Object.entries(times)) {
      serving.clock.now = OPENS - 20 * HOUR;
      const opensAt = OPENS + from * HOUR;
      await serving.issued({ title, items: 1, opensAt, closesAt: OPENS + until * HOUR });
    }
    serving.clock.now = OPENS;
    const { sets } = await learner!.call(myHomework);
    expect(sets.map(({ title }) => title)).toEqual([
      'closes next',
      'open for long',
      'comes soon',
      'comes later',
      'closed just now',
      'closed long ago',
    ]);
  });

  it('is nothing to those outside its class', async () => {
    serving = await classServing();
    const { set } = await serving.issued();
    const stranger = await serving.person('A stranger', 'learner');
    expect((await stranger.call(myHomework)).sets).toEqual([]);
    await stranger.refused(beginPaper, { params: { set: set.id } }, 'no-such-thing');
    // Nor can the tutor take part in it.
    await serving.tutor.refused(beginPaper, { params: { set: set.id } }, 'no-such-thing');
  });

  it('is gone from the list when it is withdrawn, and says so to who works on it', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued();
    const { id } = await begun(learner!, set.id);
    await serving.tutor.call(homeworkRoutes.withdrawHomework, { params: { set: set.id } });
    expect((await learner!.call(myHomework)).sets).toEqual([]);
    const params = { paper: id };
    const body = { answers: await answersTo(serving, { id }, 'right') };
    await learner!.refused(beginPaper, { params: { set: set.id } }, 'withdrawn');
    await learner!.refused(viewPaper, { params }, 'withdrawn');
    await learner!.refused(saveAnswers, { params, body }, 'withdrawn');
    await learner!.refused(submitPaper, { params }, 'withdrawn');
    await learner!.refused(reviewPaper, { params }, 'withdrawn');
  });
});

describe('a paper', () => {
  it('is the same one each time it is begun, on two devices at once too, and another learner has other circuits', async () => {
    serving = await classServing();
    const [one, other] = serving.learners;
    const { set } = await serving.issued();
    const all = await Promise.all(Array.from({ length: 5 }, () => begun(one!, set.id)));
    expect(new Set(all.map(({ id }) => id)).size).toBe(1);
    expect(await one!.call(viewPaper, { params: { paper: all[0]!.id } })).toEqual(all[0]);
    const theirs = await begun(other!, set.id);
    expect(theirs.paper.items.map(({ question }) => question.kind)).toEqual(
      all[0]!.paper.items.map(({ question }) => question.kind),
    );
    for (const [at, { question }] of theirs.paper.items.entries())
      expect(question.circuit).not.toEqual(all[0]!.paper.items[at]!.question.circuit);
  });

  it('of somebody else looks as if it were not there, whatever is asked', async () => {
    serving = await classServing();
    const [one, other] = serving.learners;
    const { set } = await serving.issued({ help: 'hints' });
    const { id } = await begun(one!, set.id);
    const params = { paper: id };
    const body = { answers: await answersTo(serving, { id }, 'right') };
    for (const [route, asked] of [
      [viewPaper, { params }],
      [saveAnswers, { params, body }],
      [askHint, { params, body: { item: 0 } }],
      [submitPaper, { params }],
      [reviewPaper, { params }],
    ] as const) {
      const words = await other!.refused(route, asked, 'no-such-thing');
      expect(await other!.refused(route, { ...asked, params: { paper: 'none' } }, 'no-such-thing')).toBe(
        words,
      );
    }
    expect((await one!.call(viewPaper, { params })).saved).toEqual([]);
  });

  it('keeps what was saved against reload and lost replies, each answer once', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued();
    const { id } = await begun(learner!, set.id);
    const first = await saved(learner!, { id }, 'blank');
    expect(first.results.map(({ result }) => result)).toEqual(['kept', 'kept', 'kept', 'kept']);
    const again = await saved(learner!, { id }, 'blank');
    expect(again.results.map(({ result }) => result)).toEqual(['already', 'already', 'already', 'already']);
    const view = await learner!.call(viewPaper, { params: { paper: id } });
    expect(view.saved.map(({ id: saved, number }) => [saved, number])).toEqual(
      [1, 2, 3, 4].map((number) => [`blank-${number - 1}`, number]),
    );
    expect(view).toMatchObject({ open: true, submittedAt: null, now: serving.clock.now });
  });

  it('refuses an answer of another kind or to no item, and keeps the others', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued();
    const { id } = await begun(learner!, set.id);
    const answers = await answersTo(serving, { id }, 'right');
    const kinds = new Set(answers.map(({ answer }) => answer.kind));
    const other = answers.find(({ answer }) => answer.kind !== answers[0]!.answer.kind)!;
    expect(kinds.size).toBeGreaterThan(1);
    const body = {
      answers: [
        { ...answers[0]!, answer: other.answer },
        answers[1]!,
        { ...answers[2]!, item: 99 },
        { ...answers[3]!, secondsUsed: null },
      ],
    };
    const { results } = await learner!.call(saveAnswers, { params: { paper: id }, body });
    expect(results).toMatchObject([
      { result: 'refused', id: 'right-0', problem: { code: 'bad-answer' } },
      { result: 'kept', number: 1 },
      { result: 'refused', id: 'right-2', problem: { code: 'bad-answer' } },
      { result: 'kept', number: 2 },
    ]);
    for (const wrong of [
      {},
      { answers: [] },
      { answers: [{ ...answers[0], id: 'x y' }] },
      { answers: 'all' },
    ])
      await learner!.refused(saveAnswers, { params: { paper: id }, body: wrong }, 'bad-value');
  });

  it('takes nothing at closing time, and what was saved counts', async () => {
    serving = await classServing();
    const [learner, idle] = serving.learners;
    const { set } = await serving.issued();
    const { id } = await begun(learner!, set.id);
    const empty = await begun(idle!, set.id);
    await saved(learner!, { id });
    serving.clock.now = CLOSES;
    const params = { paper: id };
    const answers = await answersTo(serving, { id }, 'blank');
    await learner!.refused(saveAnswers, { params, body: { answers } }, 'closed');
    await learner!.refused(submitPaper, { params }, 'closed');
    await learner!.refused(beginPaper, { params: { set: set.id } }, 'closed');
    // A device that got no reply before finds out that its answers are there.
    expect((await saved(learner!, { id })).results.map(({ result }) => result)).toEqual(
      Array(4).fill('already'),
    );
    const review = await learner!.call(reviewPaper, { params });
    expect(review.submittedAt).toBeNull();
    expect(review.report.total).toMatchObject({ earned: 8, outOf: 8, share: 1, answered: 4 });
    const [mine] = (await learner!.call(myHomework)).sets;
    expect(mine).toMatchObject({
      state: 'closed',
      mayBegin: false,
      attempts: [{ paper: id, submittedAt: null, mayReview: true, total: { earned: 8 } }],
    });
    await idle!.refused(reviewPaper, { params: { paper: empty.id } }, 'no-review');
  });

  it('is handed in once, however often that is asked, and takes nothing more', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued();
    const { id } = await begun(learner!, set.id);
    await saved(learner!, { id });
    const params = { paper: id };
    const replies = await Promise.all(
      Array.from({ length: 5 }, () => learner!.call(submitPaper, { params })),
    );
    expect(new Set(replies.map(({ submittedAt }) => submittedAt))).toEqual(new Set([OPENS + HOUR]));
    expect(replies[0]).toMatchObject({ answered: 4, items: 4, mayReview: false });
    const answers = await answersTo(serving, { id }, 'blank');
    await learner!.refused(saveAnswers, { params, body: { answers } }, 'submitted');
    serving.clock.now = CLOSES + HOUR;
    expect((await learner!.call(submitPaper, { params })).submittedAt).toBe(OPENS + HOUR);
    expect((await learner!.call(reviewPaper, { params })).mark.items).toHaveLength(4);
  });

  it('gives a hint where the set allows it, and that counts', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued({ help: 'hints', review: 'after-submitting' });
    const { id } = await begun(learner!, set.id);
    const params = { paper: id };
    const { text } = await learner!.call(askHint, { params, body: { item: 1 } });
    expect(text).toMatch(/\S/);
    expect((await learner!.call(viewPaper, { params })).hints).toEqual([{ item: 1, text }]);
    await learner!.refused(askHint, { params, body: { item: 50 } }, 'no-such-thing');
    await saved(learner!, { id });
    await learner!.call(submitPaper, { params });
    await learner!.refused(askHint, { params, body: { item: 0 } }, 'submitted');
    const review = await learner!.call(reviewPaper, { params });
    expect(review.mark.items.map(({ hint }) => hint)).toEqual([false, true, false, false]);
    const without = await serving.issued({ help: 'none' });
    const plain = await begun(learner!, without.set.id);
    await learner!.refused(askHint, { params: { paper: plain.id }, body: { item: 0 } }, 'no-hints');
  });

  it('has another version for each attempt, as many as are allowed', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued({ attempts: 2 });
    const first = await begun(learner!, set.id);
    expect((await begun(learner!, set.id)).id).toBe(first.id);
    await learner!.call(submitPaper, { params: { paper: first.id } });
    const second = await begun(learner!, set.id);
    expect(second.paper.attempt).toBe(2);
    for (const [at, { question }] of second.paper.items.entries())
      expect(question.circuit).not.toEqual(first.paper.items[at]!.question.circuit);
    await learner!.call(submitPaper, { params: { paper: second.id } });
    await learner!.refused(beginPaper, { params: { set: set.id } }, 'no-attempts-left');
    expect((await learner!.call(myHomework)).sets[0]).toMatchObject({ mayBegin: false });
  });
});

describe('a marked paper', () => {
  it('may be looked through when the set says so, and only then does the list tell marks', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    for (const [review, atOnce, later] of [
      ['after-submitting', true, true],
      ['after-closing', false, true],
      ['never', false, false],
    ] as const) {
      serving.clock.now = OPENS + HOUR;
      const { set } = await serving.issued({ review, attempts: 1 });
      const { id } = await begun(learner!, set.id);
      await saved(learner!, { id });
      const submitted = await learner!.call(submitPaper, { params: { paper: id } });
      expect(submitted.mayReview).toBe(atOnce);
      for (const [at, may] of [
        [OPENS + 2 * HOUR, atOnce],
        [CLOSES, later],
      ] as const) {
        serving.clock.now = at;
        if (may) await learner!.call(reviewPaper, { params: { paper: id } });
        else await learner!.refused(reviewPaper, { params: { paper: id } }, 'no-review');
        const own = (await learner!.call(myHomework)).sets.find((each) => each.id === set.id)!;
        expect(own.attempts[0]).toMatchObject({ mayReview: may, total: may ? { earned: 8 } : null });
      }
    }
  });

  it('has every item with answer, mark and explanation, and what to revise; not what it was made from', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued({ review: 'after-submitting' });
    const { id } = await begun(learner!, set.id);
    await saved(learner!, { id }, 'blank');
    await learner!.call(submitPaper, { params: { paper: id } });
    const review = await learner!.call(reviewPaper, { params: { paper: id } });
    expect(review.answers.map(({ item }) => item)).toEqual([0, 1, 2, 3]);
    for (const { mark } of review.mark.items) expect(mark.explanation.decides.length).toBeGreaterThan(0);
    expect(review.report.revise.map(({ skill }) => skill).sort()).toEqual([
      'controller-inputs',
      'status-lamps',
    ]);
    expect(JSON.stringify(review)).not.toMatch(/"seed"/);
  });

  it('goes to the learner’s memory once, and not before it may be looked through', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued({ review: 'after-closing' });
    const { id } = await begun(learner!, set.id);
    await saved(learner!, { id });
    await learner!.call(submitPaper, { params: { paper: id } });
    await learner!.call(myHomework);
    expect((await learner!.call(apiRoutes.answers)).answers).toEqual([]);
    expect((await learner!.call(apiRoutes.recalls)).recalls).toEqual({});
    serving.clock.now = CLOSES;
    for (let times = 0; times < 3; times++) {
      await learner!.call(myHomework);
      await learner!.call(reviewPaper, { params: { paper: id } });
    }
    const { answers } = await learner!.call(apiRoutes.answers);
    expect(answers.map((entry) => entry.kind === 'answer' && entry.answer.id)).toEqual(
      [0, 1, 2, 3].map((item) => `${id}-${item}`),
    );
    expect(Object.keys((await learner!.call(apiRoutes.recalls)).recalls).sort()).toEqual([
      'controller-inputs',
      'status-lamps',
    ]);
  });

  it('that is never looked through alone is in the memory without its explanation', async () => {
    serving = await classServing();
    const [learner] = serving.learners;
    const { set } = await serving.issued({ review: 'never' });
    const { id } = await begun(learner!, set.id);
    await saved(learner!, { id });
    serving.clock.now = CLOSES;
    await learner!.call(myHomework);
    const { answers } = await learner!.call(apiRoutes.answers);
    expect(answers).toHaveLength(4);
    for (const entry of answers)
      expect(entry).toMatchObject({ answer: { mark: { share: 1, parts: [], misconceptions: [] } } });
  });
});
