import { describe, expect, it } from 'vitest';
import { type Paper, type PaperMark, paperMark, type SavedAnswer } from '../../shared/homework.ts';
import { answerRecord } from '../../shared/practice.ts';
import type { Answer } from '../../shared/question.ts';
import {
  countedAnswers,
  countingAttempt,
  earnedOf,
  markPaper,
  overrideMark,
  paperFor,
  recordsOf,
  totalOf,
} from '../../src/homework/index.ts';
import { replay } from '../../src/memory/index.ts';
import { historyOf, partsCounted } from '../../src/practice/index.ts';
import { blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import { CLOSES, course, HOUR, OPENS, places, seats, setOf } from './course.ts';

const set = setOf(places([...course.skills.keys()], 5));
const paper: Paper = (() => {
  const made = paperFor(set, seats(1)[0]!);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
})();

const right = (item: number): Answer => rightAnswer(paper.items[item]!.question);
const save = (item: number, answer: Answer, at = OPENS + HOUR, changes: Partial<SavedAnswer> = {}) => ({
  item,
  answer,
  at,
  secondsUsed: 40,
  hint: false,
  ...changes,
});
const marked = (saved: readonly SavedAnswer[]): PaperMark => markPaper(paper, countedAnswers(set, saved));

/** The right answer with everything but the first thing asked left out. */
function inPart(answer: Answer): Answer {
  if (!('states' in answer)) return answer;
  const [first] = Object.entries(answer.states);
  return { ...answer, states: Object.fromEntries([first!]) } as Answer;
}

describe('marking a paper', () => {
  it('gives full marks for right answers', () => {
    const mark = marked(paper.items.map((_, item) => save(item, right(item))));
    expect(paperMark.safeParse(mark).success).toBe(true);
    expect(totalOf(mark)).toEqual({ earned: 10, outOf: 10, share: 1, answered: 5, items: 5 });
  });

  it('gives nothing for what was left out, and still says why the right answer is right', () => {
    const mark = marked([save(1, right(1))]);
    expect(totalOf(mark)).toEqual({ earned: 2, outOf: 10, share: 0.2, answered: 1, items: 5 });
    for (const item of mark.items) expect(item.mark.parts.length).toBeGreaterThan(0);
    expect(mark.items[0]).toMatchObject({ answered: 'none', secondsUsed: null });
  });

  it('counts the parts that were answered of an item answered in part', () => {
    const item = paper.items.findIndex(({ question }) => question.kind === 'sequence' || 'asked' in question);
    const { mark, answered } = marked([save(item, inPart(right(item)))]).items[item]!;
    expect(answered).toBe('part');
    expect(mark.share).toBeCloseTo(1 / mark.parts.length, 9);
  });

  it('names the wrong idea that gives an answer, and none of a single slip', () => {
    const OPPOSITE: Readonly<Record<string, string>> = {
      lit: 'dark',
      dark: 'lit',
      '0': '1',
      '1': '0',
      rest: 'operated',
      operated: 'rest',
    };
    const shown = paper.items.flatMap((_, item) => {
      const answer = right(item);
      if (!('states' in answer)) return [];
      const keys = Object.keys(answer.states);
      // All states turned round, and each alone: some of these answers are those of one misconception.
      return [keys, ...keys.map((key) => [key])].map((turned) => {
        const states = Object.fromEntries(
          Object.entries(answer.states).map(([key, word]) => [
            key,
            turned.includes(key) ? (OPPOSITE[word] ?? word) : word,
          ]),
        );
        const mark = marked([save(item, { ...answer, states } as Answer)]).items[item]!.mark;
        return { mark, turned: turned.length };
      });
    });
    const wrong = shown.filter(({ mark }) => !mark.correct);
    expect(wrong.some(({ mark }) => mark.misconceptions.length > 0)).toBe(true);
    for (const { mark, turned } of wrong) {
      expect(mark.share).toBeLessThan(1);
      if (turned === 1) expect(mark.misconceptions).toEqual([]);
    }
  });
});

describe('which answers count', () => {
  it('counts the last one saved before closing, whatever order they are kept in', () => {
    const early = save(0, right(0), OPENS + 1);
    const late = save(0, { ...right(0) }, OPENS + 2, { secondsUsed: 80 });
    expect(countedAnswers(set, [late, early]).get(0)).toBe(late);
    expect(countedAnswers(set, [early, late]).get(0)).toBe(late);
  });

  it('counts what was saved when the set closes, and nothing that comes at closing time or later', () => {
    const kept = save(0, right(0), CLOSES - 1);
    expect([
      ...countedAnswers(set, [kept, save(0, right(0), CLOSES), save(1, right(1), CLOSES + 1)]),
    ]).toEqual([[0, kept]]);
  });

  it('counts of two saved in the same moment the one that was given later', () => {
    const [one, other] = [save(0, right(0)), save(0, right(0), OPENS + HOUR, { secondsUsed: 80 })];
    expect(countedAnswers(set, [one, other]).get(0)).toBe(other);
    expect(countedAnswers(set, [other, one]).get(0)).toBe(one);
  });

  it('counts an answer that was sent twice once', () => {
    const one = save(2, right(2));
    expect(marked([one, one, { ...one }])).toEqual(marked([one]));
  });
});

describe("a tutor's own mark", () => {
  const mark = marked([save(0, right(0))]);
  const change = { earned: 1.5, reason: 'The drawing was misprinted.', by: 'tutor-1', at: CLOSES };

  it('stands beside the first one, and the latest holds', () => {
    const once = overrideMark(mark, 1, change);
    if (!once.ok) throw new Error('refused');
    const twice = overrideMark(once.value, 1, { ...change, earned: 2, reason: 'On second thoughts.' });
    if (!twice.ok) throw new Error('refused');
    expect(twice.value.items[1]!.mark).toEqual(mark.items[1]!.mark);
    expect(twice.value.items[1]!.overrides.map(({ reason }) => reason)).toEqual([
      'The drawing was misprinted.',
      'On second thoughts.',
    ]);
    expect(earnedOf(twice.value.items[1]!)).toBe(2);
    expect(totalOf(twice.value).earned).toBe(totalOf(mark).earned + 2);
    expect(mark.items[1]!.overrides).toEqual([]);
  });

  it('can be lower than the first one', () => {
    const lower = overrideMark(mark, 0, { ...change, earned: 0 });
    expect(lower.ok && totalOf(lower.value).earned).toBe(0);
  });

  it('may be all the marks of the item', () => {
    expect(overrideMark(mark, 1, { ...change, earned: 2 }).ok).toBe(true);
  });

  it('is refused above the marks of the item and for an item that is not there', () => {
    expect(overrideMark(mark, 1, { ...change, earned: 2.5 })).toMatchObject({
      ok: false,
      problems: [{ code: 'homework-too-many-marks', said: { item: 2, given: 2.5, marks: 2 } }],
    });
    expect(overrideMark(mark, 5, change)).toMatchObject({
      ok: false,
      problems: [{ code: 'homework-no-such-item' }],
    });
  });
});

describe('the attempt that counts', () => {
  const good = { ...marked([save(0, right(0)), save(1, right(1))]), attempt: 1 };
  const poor = { ...marked([save(0, right(0))]), attempt: 2 };

  it('is the best one, of equal ones the earlier, where the set says best', () => {
    expect(countingAttempt({ counts: 'best' }, [poor, good])).toBe(good);
    expect(countingAttempt({ counts: 'best' }, [{ ...good, attempt: 3 }, good])).toBe(good);
  });

  it('is the last one where the set says last, whatever order they are kept in', () => {
    expect(countingAttempt({ counts: 'last' }, [poor, good])).toBe(poor);
    expect(countingAttempt({ counts: 'last' }, [good, poor])).toBe(poor);
  });

  it('is none without attempts, and changes with an override', () => {
    expect(countingAttempt({ counts: 'best' }, [])).toBeUndefined();
    const raised = overrideMark(poor, 1, { earned: 2, reason: 'See note.', by: 't', at: CLOSES });
    if (!raised.ok) throw new Error('refused');
    const higher = overrideMark(raised.value, 2, { earned: 1, reason: 'r', by: 't', at: CLOSES });
    if (!higher.ok) throw new Error('refused');
    expect(countingAttempt({ counts: 'best' }, [good, higher.value])).toBe(higher.value);
  });
});

describe('homework in the memory', () => {
  const answers = countedAnswers(set, [save(0, right(0)), save(1, right(1), OPENS, { hint: true })]);
  const mark = markPaper(paper, answers);
  const records = recordsOf(paper, mark, answers, CLOSES, (item) => `week-40-1-${item}`);

  it('counts what was answered as practice does, with the hint that was looked at', () => {
    for (const record of records) expect(answerRecord.safeParse(record).success).toBe(true);
    expect(records.map(({ skill }) => skill)).toEqual(set.places.slice(0, 2).map(({ skill }) => skill));
    expect(['firm', 'sure']).toContain(records[0]!.grade);
    expect(records[1]!.grade).toBe('shaky');
    expect(replay(historyOf(records)).size).toBe(2);
  });

  it('has what was answered and how, when it was handed in, under the same id each time', () => {
    expect(records[1]).toEqual({
      id: 'week-40-1-1',
      learner: 'learner-1',
      at: CLOSES,
      skill: set.places[1]!.skill,
      circuit: paper.items[1]!.circuit,
      question: paper.items[1]!.question,
      answer: right(1),
      mark: mark.items[1]!.mark,
      attempt: {
        share: 1,
        parts: partsCounted(paper.items[1]!.question, mark.items[1]!.mark),
        help: { hint: true, explanation: false },
        secondsUsed: 40,
        secondsExpected: paper.items[1]!.secondsExpected,
      },
      grade: 'shaky',
    });
  });

  it('says nothing of what was opened and left blank, nor of an item that was not marked', () => {
    const blank = countedAnswers(set, [save(0, blankAnswer(paper.items[0]!.question)), save(1, right(1))]);
    const marks = markPaper(paper, blank);
    expect(marks.items[0]!.answered).toBe('none');
    const of = (mark: PaperMark) => recordsOf(paper, mark, blank, CLOSES, String).map(({ id }) => id);
    expect(of(marks)).toEqual(['1']);
    expect(of({ ...marks, items: marks.items.slice(0, 1) })).toEqual([]);
  });

  it('has the mark that followed from the answer, also where a tutor gave another', () => {
    const changed = overrideMark(mark, 0, { earned: 0, reason: 'why', by: 't', at: CLOSES });
    if (!changed.ok) throw new Error('refused');
    expect(recordsOf(paper, changed.value, answers, CLOSES, (item) => `week-40-1-${item}`)).toEqual(records);
  });

  it('counts once however often it is handed over', () => {
    expect(replay(historyOf([...records, ...records]))).toEqual(replay(historyOf(records)));
  });
});
