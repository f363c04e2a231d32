import { describe, expect, it } from 'vitest';
import type { PaperMark } from '../../shared/homework.ts';
import {
  classReport,
  FIRM_IDEA,
  ideasIn,
  learnerReport,
  REVISE_BELOW,
  termReport,
} from '../../src/homework/index.ts';
import { MISCONCEPTIONS } from '../../src/misconceptions/index.ts';
import { type Answering, believing, notAtAll, rightly, work } from './class-work.ts';
import { course, places, setOf } from './course.ts';

const set = setOf(places(['make-contact', 'status-lamps', 'relay-chains'], 9));

/** The misconception that alone explains most answers on this set: the class below has it. */
const idea = ((): string => {
  const counts = MISCONCEPTIONS.map(({ id }) => {
    const { marks } = work(set, [believing(id)]);
    const own = ideasIn(marks).find((shown) => shown.id === id);
    return { id, times: own?.times ?? 0 };
  });
  return counts.reduce((best, each) => (each.times > best.times ? each : best)).id;
})();

const halfRight: Answering = (question, item) => (item < 5 ? rightly(question, item) : undefined);
const fewRight: Answering = (question, item) => (item < 3 ? rightly(question, item) : undefined);
const worked = work(set, [rightly, rightly, believing(idea), believing(idea), halfRight, fewRight, rightly]);
const { marks, papers, learners } = worked;
const everybody = [...learners, 'absent-1'];
const report = classReport({ set, course, learners: everybody, marks, papers });

describe("a learner's report", () => {
  it('has marks by skill that add up to the whole', () => {
    for (const mark of marks) {
      const { total, skills } = learnerReport(mark, course);
      expect(skills.reduce((sum, { earned }) => sum + earned, 0)).toBeCloseTo(total.earned, 6);
      expect(skills.reduce((sum, { outOf }) => sum + outOf, 0)).toBe(18);
      expect(skills.map(({ skill }) => skill)).toEqual(['make-contact', 'status-lamps', 'relay-chains']);
    }
  });

  it('tells the weakest skill first to revise, with its lesson, and nothing to who had all right', () => {
    expect(learnerReport(marks[0]!, course).revise).toEqual([]);
    const { revise, skills } = learnerReport(marks[5]!, course);
    expect(revise.map(({ share }) => share)).toEqual(revise.map(({ share }) => share).toSorted());
    expect(revise.length).toBe(skills.filter(({ share }) => share < REVISE_BELOW).length);
    expect(revise[0]!.topic).toEqual({ id: 'nursery-panels', title: 'Nursery panels' });
  });

  it('names the idea behind wrong answers', () => {
    expect(learnerReport(marks[2]!, course).ideas.map(({ id }) => id)).toContain(idea);
    expect(learnerReport(marks[0]!, course).ideas).toEqual([]);
  });
});

describe('a class report', () => {
  it('has a row for everybody, in the order of the class, also for who handed in nothing', () => {
    expect(report.rows.map(({ learner }) => learner)).toEqual(everybody);
    expect(report.rows.at(-1)).toEqual({
      learner: 'absent-1',
      stands: 'nothing',
      total: null,
      shares: [null, null, null],
    });
    expect([report.handedIn, report.learners]).toEqual([7, 8]);
    expect(report.rows[0]!.shares).toEqual([1, 1, 1]);
  });

  it('has the mean of those who handed in over each skill', () => {
    for (const [column, { share }] of report.skills.entries()) {
      const shares = report.rows.slice(0, 7).map(({ shares }) => shares[column]!);
      expect(share).toBeCloseTo(shares.reduce((sum, each) => sum + each, 0) / 7, 9);
    }
  });

  it('has the commonest wrong idea first, with an example on which it showed and no name', () => {
    const [first] = report.ideas;
    expect(first).toMatchObject({ id: idea, learners: [learners[2], learners[3]] });
    const { example } = first!;
    expect(example!.mark.misconceptions).toEqual([idea]);
    expect(example!.mark.correct).toBe(false);
    expect(JSON.stringify(example)).not.toContain('learner-');
    const length = (at: { learner: string; item: number }): number =>
      papers
        .find(({ learner }) => learner === at.learner)!
        .items[at.item]!.question.circuit.paths.reduce((sum, { steps }) => sum + steps.length, 0);
    const shortest = Math.min(...first!.shownIn.map(length));
    expect(example!.item.question.circuit.paths.reduce((sum, { steps }) => sum + steps.length, 0)).toBe(
      shortest,
    );
  });

  it('has no example from a paper of another attempt', () => {
    const other = papers.map((paper) => ({ ...paper, attempt: 2 }));
    const found = classReport({ set, course, learners, marks, papers: other }).ideas;
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(({ example }) => example === null)).toBe(true);
  });

  it('tells for each place how many left it out, how hard it was and what it told apart', () => {
    expect(report.places.map(({ leftOut }) => leftOut)).toEqual([0, 0, 0, 1, 1, 2, 2, 2, 2]);
    for (const { facility, discrimination } of report.places) {
      expect(facility).toBeGreaterThanOrEqual(0);
      expect(facility).toBeLessThanOrEqual(1);
      if (discrimination !== null) expect(Math.abs(discrimination)).toBeLessThanOrEqual(1);
    }
    // Who left out the last places had fewer marks elsewhere as well.
    expect(report.places[8]!.upperLower).toBeGreaterThan(0);
    expect(report.alpha).toBeGreaterThan(0);
  });

  it('says whom to look after and why', () => {
    const concerns = new Map(report.lookAfter.map((entry) => [entry.learner, entry.concerns]));
    expect(concerns.get('absent-1')).toEqual([{ kind: 'nothing-handed-in' }]);
    expect(concerns.get(learners[5]!)!.map(({ kind }) => kind)).toEqual(['half-left-out', 'low-marks']);
    expect(concerns.has(learners[0]!)).toBe(false);
    const firm = concerns.get(learners[2]!)?.find(({ kind }) => kind === 'firm-idea');
    const times = ideasIn([marks[2]!])[0]!.times;
    expect(times).toBeGreaterThanOrEqual(FIRM_IDEA);
    expect(firm).toMatchObject({ id: idea, times });
  });

  it('leaves out marks of people who are not in the class', () => {
    const stranger: PaperMark = { ...marks[0]!, learner: 'stranger' };
    expect(classReport({ set, course, learners: everybody, marks: [...marks, stranger], papers })).toEqual(
      report,
    );
  });

  it('is whole where nobody has handed in', () => {
    const empty = classReport({ set, course, learners: ['a', 'b'], marks: [] });
    expect(empty).toMatchObject({ handedIn: 0, ideas: [], alpha: null });
    expect(empty.lookAfter).toHaveLength(2);
    expect(empty.places.every(({ facility }) => facility === null)).toBe(true);
  });

  it('looks after who opened the paper and answered nothing', () => {
    const blank = work(set, [notAtAll]);
    expect(
      classReport({ set, course, learners: blank.learners, marks: blank.marks }).lookAfter[0]!.concerns.map(
        ({ kind }) => kind,
      ),
    ).toEqual(['half-left-out', 'low-marks']);
  });
});

describe('a report over several sets', () => {
  const second = setOf(places(['relay-chains', 'seal-in'], 4), { id: 'week-41' });
  const later = work(second, [rightly, halfRight, notAtAll]);
  const term = termReport({
    course,
    learners: everybody,
    sets: [
      { set, marks },
      { set: second, marks: later.marks },
    ],
  });

  it('has each learner with the share of every set, and nothing where nothing was handed in', () => {
    expect(term.rows.map(({ learner }) => learner)).toEqual(everybody);
    expect(term.rows[0]!.bySet).toEqual([1, 1]);
    expect(term.rows[2]!.bySet[1]).toBe(0);
    expect(term.rows[3]!.bySet[1]).toBeNull();
    expect(term.rows.at(-1)!.bySet).toEqual([null, null]);
  });

  it('weighs a skill by the marks it had in all sets together', () => {
    expect(term.skills.map(({ skill }) => skill)).toEqual([
      'make-contact',
      'status-lamps',
      'relay-chains',
      'seal-in',
    ]);
    const own = [marks[2]!, later.marks[2]!].flatMap(({ items }) =>
      items.filter(({ skill }) => skill === 'relay-chains'),
    );
    const earned = own.reduce((sum, item) => sum + Math.round(item.mark.share * item.marks * 100) / 100, 0);
    expect(term.rows[2]!.bySkill[2]).toBeCloseTo(earned / (2 * own.length), 9);
    expect(term.rows[3]!.bySkill[3]).toBeNull();
  });

  it('counts wrong ideas over all of them', () => {
    const { times } = term.ideas.find(({ id }) => id === idea)!;
    expect(times).toBe(ideasIn([...marks, ...later.marks]).find(({ id }) => id === idea)!.times);
  });
});

describe('a set that has not closed, or not been marked', () => {
  it('accuses nobody, and says of each how it stands', () => {
    const set = setOf(places([...course.skills.keys()], 5));
    const { marks, learners } = work(set, [rightly, notAtAll, rightly]);
    const told = (closed: boolean, waiting: readonly string[]) =>
      classReport({ set, course, learners, marks: marks.slice(0, 1), closed, waiting });
    const open = told(false, [learners[1]!]);
    expect(open.lookAfter).toEqual([]);
    expect(open.rows.map(({ stands }) => stands)).toEqual(['marked', 'waiting', 'open']);
    const closed = told(true, [learners[1]!]);
    expect(closed.rows.map(({ stands }) => stands)).toEqual(['marked', 'waiting', 'nothing']);
    expect(closed.lookAfter).toEqual([{ learner: learners[2], concerns: [{ kind: 'nothing-handed-in' }] }]);
  });
});
