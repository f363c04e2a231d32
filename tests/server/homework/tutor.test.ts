/** Homework as a tutor runs it: drafted, looked at, issued, prepared, marked, reported, handed on. */
import { unzipSync } from 'fflate';
import { afterEach, describe, expect, it } from 'vitest';
import { homeworkRoutes } from '../../../shared/api-homework.ts';
import type { PaperItem } from '../../../shared/homework.ts';
import { ideasIn, readCsv } from '../../../src/homework/index.ts';
import { believing } from '../../homework/class-work.ts';
import { CLOSES, HOUR, OPENS } from '../../homework/course.ts';
import { english } from '../../support/in-english.ts';
import { answersTo, type ClassServing, classServing, type Person, wishOf } from './class-serving.ts';

let serving: ClassServing;
afterEach(() => serving.end());

const { beginPaper, saveAnswers, submitPaper, draftHomework, issueHomework, prepareHomework } =
  homeworkRoutes;

async function handIn(learner: Person, set: string, manner: 'right' | 'blank' | 'wrong'): Promise<string> {
  const { id } = await learner.call(beginPaper, { params: { set } });
  const answers = await answersTo(serving, { id }, manner === 'blank' ? 'blank' : 'right');
  const { paper } = (await serving.store.homework.paper(id))!;
  const given =
    manner === 'wrong'
      ? answers.map((answer) => ({
          ...answer,
          answer: believing('make-for-break')(paper.items[answer.item]!.question, answer.item)!,
        }))
      : answers;
  await learner.call(saveAnswers, { params: { paper: id }, body: { answers: given } });
  await learner.call(submitPaper, { params: { paper: id } });
  return id;
}

async function prepared(set: string): Promise<void> {
  for (;;) {
    const { made, of } = await serving.tutor.call(prepareHomework, { params: { set } });
    if (made === of) return;
  }
}

describe('a draft', () => {
  it('is made from topics or skills, shown, changed, and erased', async () => {
    serving = await classServing();
    const { tutor, classId } = serving;
    const view = await tutor.call(draftHomework, {
      params: { class: classId },
      body: wishOf({ skills: [], topics: ['nursery-panels'], items: 6, counts: 'last' }),
    });
    expect(view).toMatchObject({ state: 'draft', class: classId, madeBy: tutor.id, issuedAt: null });
    expect(view.set.places).toHaveLength(6);
    expect(view.set).toMatchObject({ counts: 'last', attempts: 2 });
    const params = { set: view.set.id };
    expect(await tutor.call(homeworkRoutes.homework, { params })).toEqual(view);
    const changed = await tutor.call(homeworkRoutes.changeHomework, { params, body: wishOf({ items: 3 }) });
    expect(changed.set.places).toHaveLength(3);
    expect((await tutor.call(homeworkRoutes.homework, { params })).set).toEqual(changed.set);
    expect(
      (await tutor.call(homeworkRoutes.classHomework, { params: { class: classId } })).sets,
    ).toMatchObject([{ state: 'draft', items: 3, outOf: 6, learners: 2, papers: 0, handedIn: 0 }]);
    expect(await tutor.call(homeworkRoutes.withdrawHomework, { params })).toEqual({ result: 'erased' });
    await tutor.refused(homeworkRoutes.homework, { params }, 'no-such-thing');
  });

  it('is refused in words where it can not be as wished', async () => {
    serving = await classServing();
    const { tutor, classId } = serving;
    const params = { class: classId };
    for (const [changes, words] of [
      [{ skills: ['juggling'] }, 'juggling'],
      [{ skills: [], topics: ['boiler-room'] }, 'boiler-room'],
      [{ closesAt: OPENS }, 'closes before it opens'],
    ] as const)
      expect(await tutor.refused(draftHomework, { params, body: wishOf(changes) }, 'bad-set')).toContain(
        words,
      );
    for (const wrong of [{ items: 0 }, { title: ' ' }, { skills: [] }, { level: 'huge' }, { bells: 1 }])
      await tutor.refused(draftHomework, { params, body: wishOf(wrong) }, 'bad-value');
    serving.clock.now = CLOSES;
    const late = await tutor.call(draftHomework, { params, body: wishOf() });
    expect(await tutor.refused(issueHomework, { params: { set: late.set.id } }, 'bad-set')).toContain('past');
  });

  it('has sample papers with the right answers, the same for the same number', async () => {
    serving = await classServing();
    const { set } = await serving.issued();
    const sample = (query = '') =>
      serving.tutor.call(homeworkRoutes.sampleHomework, { params: { set: set.id }, query });
    const [one, again, other] = [await sample(), await sample('?number=1'), await sample('?number=2')];
    expect(one.items.map(({ place }) => place)).toEqual([1, 2, 3, 4]);
    expect(again).toEqual(one);
    expect(other.items[0]!.item.circuit).not.toBe(one.items[0]!.item.circuit);
    for (const { mark, question } of one.items) {
      expect(mark.parts.map(({ item }) => item)).toEqual(question.asked.items.map(({ item }) => item));
      expect(mark.parts.every(({ right }) => right !== '')).toBe(true);
    }
  });
});

describe('an issued set', () => {
  it('is issued once, and can not be changed then', async () => {
    serving = await classServing();
    const { set, issuedAt } = await serving.issued();
    serving.clock.now += HOUR;
    const params = { set: set.id };
    expect((await serving.tutor.call(issueHomework, { params })).issuedAt).toBe(issuedAt);
    const body = wishOf({ title: 'Otherwise' });
    await serving.tutor.refused(homeworkRoutes.changeHomework, { params, body }, 'already-issued');
    expect(await serving.tutor.call(homeworkRoutes.withdrawHomework, { params })).toEqual({
      result: 'withdrawn',
    });
    await serving.tutor.refused(issueHomework, { params }, 'withdrawn');
    await serving.tutor.refused(prepareHomework, { params }, 'not-issued');
  });

  it('closes later when its tutor says so, for everybody, and never earlier', async () => {
    serving = await classServing();
    const { tutor, learners, clock } = serving;
    const [learner] = learners;
    const { set } = await serving.issued();
    const params = { set: set.id };
    const begun = await learner!.call(beginPaper, { params });
    const paper = { paper: begun.id };
    const [first, second] = await answersTo(serving, begun, 'right');
    const later = CLOSES + 2 * HOUR;
    const moving = (closesAt: number) => ({ params, body: { closesAt } });
    await tutor.refused(homeworkRoutes.closeLater, moving(CLOSES - 1), 'bad-set');
    const moved = await tutor.call(homeworkRoutes.closeLater, moving(later));
    expect([moved.set.closesAt, moved.wish.closesAt]).toEqual([later, later]);
    clock.now = CLOSES + HOUR;
    expect((await learner!.call(homeworkRoutes.paper, { params: paper })).paper.closesAt).toBe(later);
    await learner!.call(saveAnswers, { params: paper, body: { answers: [first] } });
    clock.now = later;
    await learner!.refused(saveAnswers, { params: paper, body: { answers: [second] } }, 'closed');
    await tutor.refused(homeworkRoutes.closeLater, moving(later + HOUR), 'closed');
    const draft = await tutor.call(draftHomework, {
      params: { class: serving.classId },
      body: wishOf({ closesAt: later + HOUR }),
    });
    await tutor.refused(
      homeworkRoutes.closeLater,
      { params: { set: draft.set.id }, body: { closesAt: later + 2 * HOUR } },
      'not-issued',
    );
  });

  it('has a paper prepared for everybody, on circuits that nobody shares, by however many calls', async () => {
    serving = await classServing(12);
    const draft = await serving.tutor.call(draftHomework, {
      params: { class: serving.classId },
      body: wishOf(),
    });
    const params = { set: draft.set.id };
    await serving.tutor.refused(prepareHomework, { params }, 'not-issued');
    await serving.tutor.call(issueHomework, { params });
    const first = await serving.tutor.call(prepareHomework, { params });
    expect(first).toMatchObject({ of: 12 });
    expect(first.made).toBeGreaterThan(0);
    await Promise.all([prepared(draft.set.id), prepared(draft.set.id), prepared(draft.set.id)]);
    const { papers } = await serving.tutor.call(homeworkRoutes.homeworkPapers, { params });
    expect(papers.map(({ name }) => name).sort()).toEqual(serving.learners.map(({ name }) => name).sort());
    expect(new Set(papers.map(({ code }) => code)).size).toBe(12);
    const circuits = await serving.store.homework.circuitsIn(draft.set.id);
    expect([...circuits.values()].map(({ size }) => size)).toEqual([12, 12, 12, 12]);
  });

  it('belongs to the tutors of its class and to administrators alone', async () => {
    serving = await classServing();
    const { set } = await serving.issued();
    await prepared(set.id);
    const id = await handIn(serving.learners[0]!, set.id, 'right');
    const other = await serving.person('Another tutor', 'tutor');
    const admin = await serving.person('Admin', 'admin');
    for (const route of Object.values(homeworkRoutes)) {
      if (route.role !== 'tutor') continue;
      const body = {
        draftHomework: wishOf(),
        changeHomework: wishOf(),
        closeLater: { closesAt: CLOSES + HOUR },
        overrideMark: { item: 0, earned: 1, reason: 'why' },
        typeMarks: { code: 'ABC', marks: [1] },
      }[Object.entries(homeworkRoutes).find(([, each]) => each === route)![0]];
      const asked = {
        params: { set: set.id, paper: id, class: serving.classId, person: serving.learners[0]!.id },
        ...(body ? { body } : {}),
      };
      await other.refused(route, asked, 'no-such-thing');
      await serving.learners[0]!.refused(route, asked, 'not-yours');
      if (route.method === 'GET') expect((await admin.ask(route, asked)).statusCode).toBe(200);
    }
  });
});

describe('the report', () => {
  it('says of a class what each learner earned, which wrong idea showed on which drawing, and whom to look after', async () => {
    serving = await classServing(4);
    const { set } = await serving.issued({ attempts: 1, items: 10 });
    const [good, wrong, blank, absent] = serving.learners;
    const handedIn = [
      await handIn(good!, set.id, 'right'),
      await handIn(wrong!, set.id, 'wrong'),
      await handIn(blank!, set.id, 'blank'),
    ];
    const { report, people, waiting, state } = await serving.tutor.call(homeworkRoutes.homeworkReport, {
      params: { set: set.id },
    });
    expect({ waiting, state }).toEqual({ waiting: 0, state: 'open' });
    expect(people).toEqual(serving.learners.map(({ id, name }) => ({ id, name })));
    expect(report).toMatchObject({ handedIn: 3, learners: 4 });
    expect(report.rows.map(({ total }) => total?.earned ?? null)).toEqual([20, expect.any(Number), 0, null]);
    // Circuits are others in each run, and so is where the wrong idea shows.
    const wholes = await Promise.all(handedIn.map((id) => serving.store.homework.markOf(id)));
    const shown = ideasIn(wholes.flatMap((mark) => mark ?? []));
    const toldIdeas = shown.map((idea) => ({
      ...idea,
      ...english.ideas[idea.id as keyof typeof english.ideas],
    }));
    expect(report.ideas.map(({ example: _, ...idea }) => idea)).toEqual(toldIdeas);
    for (const { id, example, shownIn } of report.ideas) {
      expect(example!.mark.misconceptions.map((each) => each.id)).toEqual([id]);
      const drawings = await Promise.all(
        shownIn.map(
          async ({ item }) => (await serving.store.homework.paper(handedIn[1]!))!.paper.items[item]!,
        ),
      );
      const size = ({ question }: PaperItem) =>
        question.circuit.paths.reduce((sum, { steps }) => sum + steps.length, 0);
      expect(size(example!.item)).toBe(Math.min(...drawings.map(size)));
    }
    expect(report.places).toHaveLength(10);
    // Nobody gives concern as long as there is time left.
    expect(report.lookAfter).toEqual([]);
    expect(report.rows.map(({ stands }) => stands)).toEqual(['marked', 'marked', 'marked', 'open']);
    serving.clock.now = CLOSES;
    const closed = await serving.tutor.call(homeworkRoutes.homeworkReport, { params: { set: set.id } });
    const { lookAfter } = closed.report;
    expect(lookAfter.map(({ learner }) => learner).slice(-2)).toEqual([blank!.id, absent!.id]);
  });

  it('counts what closed with answers saved, marks it when somebody looks, and no longer who has left', async () => {
    serving = await classServing(3);
    const { set } = await serving.issued();
    const [one, idle, gone] = serving.learners;
    for (const learner of [one!, gone!]) {
      const { id } = await learner.call(beginPaper, { params: { set: set.id } });
      const answers = await answersTo(serving, { id }, 'right');
      await learner.call(saveAnswers, { params: { paper: id }, body: { answers } });
    }
    await idle!.call(beginPaper, { params: { set: set.id } });
    await serving.store.people.classes.remove(serving.classId, gone!.id, 'learner');
    const params = { set: set.id };
    const before = await serving.tutor.call(homeworkRoutes.homeworkReport, { params });
    expect(before.report).toMatchObject({ handedIn: 0, learners: 2 });
    serving.clock.now = CLOSES;
    const after = await serving.tutor.call(homeworkRoutes.homeworkReport, { params });
    expect(after.report).toMatchObject({ handedIn: 1, learners: 2 });
    expect(after.report.rows.map(({ total }) => total?.earned ?? null)).toEqual([8, null]);
    const { papers } = await serving.tutor.call(homeworkRoutes.homeworkPapers, { params });
    expect(papers.map(({ name, saved, total }) => [name, saved, total?.earned ?? null])).toEqual([
      ['Learner 1', 4, 8],
      ['Learner 2', 0, null],
      ['Learner 3', 4, 8],
    ]);
  });

  it('takes the attempt that counts', async () => {
    serving = await classServing(1);
    for (const [counts, earned] of [
      ['best', 8],
      ['last', 0],
    ] as const) {
      const { set } = await serving.issued({ counts });
      await handIn(serving.learners[0]!, set.id, 'right');
      await handIn(serving.learners[0]!, set.id, 'blank');
      const params = { set: set.id };
      const { report } = await serving.tutor.call(homeworkRoutes.homeworkReport, { params });
      expect(report.rows[0]!.total).toMatchObject({ earned });
    }
  });

  it('of a term has every opened set, and of competence what practice and homework have shown', async () => {
    serving = await classServing(2);
    const [one] = serving.learners;
    const params = { class: serving.classId };
    const first = await serving.issued({ review: 'after-submitting', items: 10 });
    await handIn(one!, first.set.id, 'right');
    serving.clock.now += HOUR;
    const later = await serving.issued({ opensAt: OPENS + 50 * HOUR });
    const term = await serving.tutor.call(homeworkRoutes.term, { params });
    expect(term.sets.map(({ id }) => id)).toEqual([first.set.id]);
    expect(term.report.rows.map(({ bySet }) => bySet)).toEqual([[1], [null]]);
    serving.clock.now = OPENS + 50 * HOUR;
    await handIn(one!, later.set.id, 'blank');
    const both = await serving.tutor.call(homeworkRoutes.term, { params });
    expect(both.report.rows.map(({ bySet }) => bySet)).toEqual([
      [1, 0],
      [null, null],
    ]);
    const { matrix, people, refreshers } = await serving.tutor.call(homeworkRoutes.competence, {
      params,
      query: '?days=365',
    });
    expect(people.map(({ name }) => name)).toEqual(['Learner 1', 'Learner 2']);
    const cells = new Map(matrix.skills.map(({ id }, at) => [id, matrix.rows[0]!.cells[at]!]));
    expect(cells.get('status-lamps')).toMatchObject({ kind: 'held', provenAt: OPENS + HOUR });
    expect(cells.get('seal-in')).toEqual({ kind: 'not-yet', begun: false });
    expect(matrix.rows[1]!.cells.every(({ kind }) => kind === 'not-yet')).toBe(true);
    expect(refreshers.map(({ skill }) => skill).sort()).toEqual(['controller-inputs', 'status-lamps']);
  });
});

describe('a mark', () => {
  it('can be overridden with a reason, beside the first one, and every list follows', async () => {
    serving = await classServing(1);
    const { set } = await serving.issued();
    const id = await handIn(serving.learners[0]!, set.id, 'blank');
    const params = { paper: id };
    const override = { item: 1, earned: 1.5, reason: 'The drawing was read rightly, see the margin.' };
    const marked = await serving.tutor.call(homeworkRoutes.overrideMark, { params, body: override });
    expect(marked).toMatchObject({ name: 'Learner 1', report: { total: { earned: 1.5 } } });
    expect(marked.mark.items[1]).toMatchObject({
      mark: { share: 0 },
      overrides: [{ earned: 1.5, reason: override.reason, by: serving.tutor.id, at: serving.clock.now }],
    });
    await serving.tutor.call(homeworkRoutes.overrideMark, { params, body: { ...override, earned: 2 } });
    expect(
      (await serving.tutor.call(homeworkRoutes.markedPaper, { params })).mark.items[1]!.overrides,
    ).toHaveLength(2);
    // A second tutor, who looked before the last of them was given, is told of it and changes nothing.
    const message = await serving.tutor.refused(
      homeworkRoutes.overrideMark,
      { params, body: { ...override, earned: 0.5, known: 1 } },
      'marked-meanwhile',
    );
    expect(message).toMatch(
      /has given item 2 2 of \d marks: “The drawing was read rightly, see the margin\.”/,
    );
    const seen = { ...override, earned: 2, known: 2 };
    const again = await serving.tutor.call(homeworkRoutes.overrideMark, { params, body: seen });
    expect(again.mark.items[1]!.overrides.map(({ earned }) => earned)).toEqual([1.5, 2, 2]);
    const { report } = await serving.tutor.call(homeworkRoutes.homeworkReport, { params: { set: set.id } });
    expect(report.rows[0]!.total).toMatchObject({ earned: 2 });
    for (const wrong of [{ earned: 3 }, { item: 9 }])
      await serving.tutor.refused(
        homeworkRoutes.overrideMark,
        { params, body: { ...override, ...wrong } },
        'bad-mark',
      );
    for (const wrong of [{ reason: '  ' }, { earned: -1 }, { earned: 0.001 }])
      await serving.tutor.refused(
        homeworkRoutes.overrideMark,
        { params, body: { ...override, ...wrong } },
        'bad-value',
      );
  });

  it('is not there before something was handed in', async () => {
    serving = await classServing(1);
    const { set } = await serving.issued();
    const { id } = await serving.learners[0]!.call(beginPaper, { params: { set: set.id } });
    const params = { paper: id };
    await serving.tutor.refused(homeworkRoutes.markedPaper, { params }, 'not-handed-in');
    const body = { item: 0, earned: 1, reason: 'why' };
    await serving.tutor.refused(homeworkRoutes.overrideMark, { params, body }, 'not-handed-in');
  });

  it('is typed in by the code of a paper that was written on paper, also after closing', async () => {
    serving = await classServing(1);
    const { set } = await serving.issued();
    await prepared(set.id);
    serving.clock.now = CLOSES + HOUR;
    const params = { set: set.id };
    const [row] = (await serving.tutor.call(homeworkRoutes.homeworkPapers, { params })).papers;
    const { code } = row!;
    const typed = { code: ` ${code.slice(0, 3).toLowerCase()}-${code.slice(3)}`, marks: [2, 0, null, 1.5] };
    const result = await serving.tutor.call(homeworkRoutes.typeMarks, { params, body: typed });
    expect(result).toMatchObject({
      paper: row!.id,
      name: 'Learner 1',
      total: { earned: 3.5, outOf: 8, answered: 3, items: 4 },
    });
    const { report } = await serving.tutor.call(homeworkRoutes.homeworkReport, { params });
    expect(report).toMatchObject({ handedIn: 1, rows: [{ total: { earned: 3.5 } }] });
    await serving.tutor.call(homeworkRoutes.typeMarks, { params, body: { code, marks: [2, 2, 2, 2] } });
    const marked = await serving.tutor.call(homeworkRoutes.markedPaper, { params: { paper: row!.id } });
    expect(marked.report.total.earned).toBe(8);
    expect(marked.mark.items[0]!.overrides.map(({ earned, reason }) => [earned, reason])).toEqual([
      [2, 'Marked on paper.'],
      [2, 'Marked on paper.'],
    ]);
    const mistyped = code.slice(0, 8) + (code.endsWith('A') ? 'B' : 'A');
    const wrongs = [
      [{ code: mistyped, marks: [1, 1, 1, 1] }, 'no-such-code'],
      [{ code: 'lost', marks: [1, 1, 1, 1] }, 'no-such-code'],
      [{ code, marks: [1, 1, 1] }, 'bad-mark'],
      [{ code, marks: [3, 1, 1, 1] }, 'bad-mark'],
    ] as const;
    for (const [body, problem] of wrongs)
      await serving.tutor.refused(homeworkRoutes.typeMarks, { params, body }, problem);
  });
});

describe('the files of a set', () => {
  it('are marks as a table, with everybody in it', async () => {
    serving = await classServing(3);
    const { set } = await serving.issued();
    await handIn(serving.learners[0]!, set.id, 'right');
    await handIn(serving.learners[1]!, set.id, 'blank');
    const { body } = await serving.tutor.file(homeworkRoutes.marksCsv, { params: { set: set.id } });
    const table = readCsv(body);
    if (!table.ok) throw new Error(JSON.stringify(table.problems));
    expect(
      table.value.rows.map(({ value }) => ['name', 'attempt', 'earned', 'out of', 'percent'].map(value)),
    ).toEqual([
      ['Learner 1', '1', '8', '8', '100'],
      ['Learner 2', '1', '0', '8', '0'],
      ['Learner 3', '', '', '', ''],
    ]);
  });

  it('are statements under pseudonyms that stay the same', async () => {
    serving = await classServing(2);
    const { set } = await serving.issued();
    for (const learner of serving.learners) await handIn(learner, set.id, 'right');
    const first = await serving.tutor.file(homeworkRoutes.statements, { params: { set: set.id } });
    const again = await serving.tutor.file(homeworkRoutes.statements, { params: { set: set.id } });
    const statements = first.json() as { id: string; actor: { account: { name: string } } }[];
    expect(again.json()).toEqual(statements);
    expect(statements).toHaveLength(10);
    expect(new Set(statements.map(({ id }) => id)).size).toBe(10);
    expect(new Set(statements.map(({ actor }) => actor.account.name)).size).toBe(2);
    for (const { id, name } of serving.learners) {
      expect(first.body).not.toContain(id);
      expect(first.body).not.toContain(name);
    }
    // RFC 9562: version and variant.
    for (const { id } of statements)
      expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it('are packages with the sample paper, no learner’s', async () => {
    serving = await classServing(1);
    const { set } = await serving.issued();
    const params = { set: set.id };
    for (const route of [homeworkRoutes.package30, homeworkRoutes.package22]) {
      const { rawPayload } = await serving.tutor.file(route, { params });
      const names = Object.keys(unzipSync(rawPayload));
      expect(names).toContain('imsmanifest.xml');
      expect(names.filter((name) => name.startsWith('items/'))).toHaveLength(4);
    }
  });

  it('are papers to print, their key, and evidence of what one person has proven', async () => {
    serving = await classServing(2);
    const { set } = await serving.issued({ review: 'after-submitting' });
    const { tutor } = serving;
    const params = { set: set.id };
    for (const route of [homeworkRoutes.papersPdf, homeworkRoutes.keyPdf])
      await tutor.refused(route, { params }, 'not-prepared');
    await prepared(set.id);
    await handIn(serving.learners[0]!, set.id, 'right');
    const evidence = { params: { person: serving.learners[0]!.id }, query: '?zone=Europe/Paris' };
    for (const reply of [
      await tutor.file(homeworkRoutes.papersPdf, { params, query: '?zone=Europe/Paris' }),
      await tutor.file(homeworkRoutes.keyPdf, { params }),
      await tutor.file(homeworkRoutes.evidencePdf, evidence),
    ])
      expect(reply.rawPayload.subarray(0, 5).toString()).toBe('%PDF-');
    await tutor.refused(homeworkRoutes.papersPdf, { params, query: '?zone=Nowhere/Else' }, 'bad-value');
  });
});
