import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bank as bankSchema } from '../../shared/bank.ts';
import type { Grade, Recall } from '../../shared/memory.ts';
import { answerRecord } from '../../shared/practice.ts';
import { question as questionSchema } from '../../shared/question.ts';
import { fingerprint } from '../../src/generator/index.ts';
import { isHeld, newRecall, type Recalls, recallOf, replay } from '../../src/memory/index.ts';
import {
  courseOf,
  growthOf,
  historyOf,
  judge,
  nextTask,
  summarise,
  type Task,
} from '../../src/practice/index.ts';
import { blankAnswer, checkQuestion, rightAnswer } from '../../src/questions/index.ts';
import { arbitraryGrade, reviewAs } from '../memory/arbitraries.ts';

const AT = Date.UTC(2026, 4, 4, 8);
const DAY = 86_400_000;

const recipe = (families: string[], kinds: string[]) => ({ families, kinds, size: [1, 4], share: 1 });
const bank = bankSchema.parse({
  topics: [
    {
      id: 'first',
      title: 'First',
      summary: 'A bank for tests.',
      order: 1,
      skills: [
        { id: 'make', title: 'Make', needs: [], recipes: [recipe(['make-only'], ['lamp-states'])] },
        {
          id: 'pair',
          title: 'Pair',
          needs: ['make'],
          recipes: [recipe(['status-pair'], ['lamp-states', 'sequence'])],
        },
        { id: 'seal', title: 'Seal', needs: ['pair'], recipes: [recipe(['seal-in'], ['sequence'])] },
      ],
      lesson: [],
      circuits: [],
      questions: [],
    },
  ],
});
const made = courseOf(bank);
if (!made.ok) throw new Error('the bank of this test is wrong');
const course = made.value;

const request = (more: Partial<Parameters<typeof nextTask>[0]> = {}) => ({
  course,
  recalls: new Map() as Recalls,
  at: AT,
  seed: 'p',
  number: 0,
  recent: [],
  seen: new Set<string>(),
  ...more,
});

function taskOf(more: Partial<Parameters<typeof nextTask>[0]> = {}): Task {
  const next = nextTask(request(more));
  if (!next.ok) throw new Error(`no task: ${next.reason}`);
  return next.task;
}

const help = { hint: false, explanation: false };

describe('a course', () => {
  it('refuses a bank whose skills stand in a circle', () => {
    const [topic] = bank.topics;
    const circle = {
      topics: [
        {
          ...topic!,
          skills: topic!.skills.map((skill) => ({
            ...skill,
            needs: [skill.id === 'make' ? 'seal' : 'make'],
          })),
        },
      ],
    };
    const refused = courseOf(circle);
    expect(refused.ok ? [] : refused.problems.map(({ code }) => code)).toContain('skill-circle');
  });
});

describe('the next task', () => {
  it('begins with a skill that stands on nothing', () => {
    expect(taskOf()).toMatchObject({ skill: 'make', why: 'new' });
  });

  it('is a question that the contract describes and that has one right answer, for 60 seeds', () => {
    for (let seed = 0; seed < 60; seed++) {
      const { question, circuit, secondsExpected } = taskOf({
        seed: `s${seed}`,
        only: ['make', 'pair', 'seal'][seed % 3]!,
      });
      expect(questionSchema.parse(question)).toEqual(question);
      expect(checkQuestion(question)).toEqual([]);
      expect(circuit).toBe(fingerprint(question.circuit));
      expect(secondsExpected).toBeGreaterThan(0);
    }
  });

  it('is the same for the same request, and another for another number', () => {
    expect(taskOf({ number: 3 })).toEqual(taskOf({ number: 3 }));
    expect(taskOf({ number: 4 }).question).not.toEqual(taskOf({ number: 3 }).question);
  });

  it('never has a circuit that was seen, until there is none left', () => {
    const seen = new Set<string>();
    for (let number = 0; number < 25; number++) {
      const next = nextTask(request({ number, only: 'make', seen }));
      if (!next.ok) {
        expect(next).toEqual({ ok: false, reason: 'no-circuit', skill: 'make' });
        break;
      }
      expect(seen.has(next.task.circuit)).toBe(false);
      seen.add(next.task.circuit);
    }
    expect(seen.size).toBeGreaterThan(10);
  });

  it('is none for a skill that there is not', () => {
    expect(nextTask(request({ only: 'juggling' }))).toEqual({ ok: false, reason: 'nothing' });
  });

  it('is smaller after a lost answer, and one of the smallest after two in a row', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(arbitraryGrade, fc.integer({ min: 0, max: 90 })), { minLength: 1, maxLength: 12 }),
        (answers) => {
          let at = AT;
          let recall: Recall = newRecall();
          for (const [number, [grade, days]] of answers.entries()) {
            at += days * DAY;
            recall = reviewAs(recall, grade, at, `c${number}`);
          }
          const before = growthOf(recall);
          const lost = reviewAs(recall, 'lost', at + DAY, 'x');
          expect(growthOf(lost)).toBeLessThanOrEqual(Math.max(0, before - 1));
          expect(growthOf(reviewAs(lost, 'lost', at + DAY, 'y'))).toBe(0);
        },
      ),
    );
  });

  it('of those issued is none that is too large after a lost answer', () => {
    const issue = (id: string, reviews: number) => ({
      id: id.padEnd(21, '0'),
      skill: 'make',
      reviews,
      issuedAt: AT,
      until: AT + 30 * DAY,
    });
    const issued = [issue('large', 6), issue('middle', 3), issue('small', 0)];
    const issuedAfter = (...grades: Grade[]) => {
      const recall = grades.reduce<Recall>(
        (before, grade, number) => reviewAs(before, grade, AT + number * 10 * DAY, `c${number}`),
        newRecall(),
      );
      return taskOf({ recalls: new Map([['make', recall]]), only: 'make', issued }).issued;
    };
    expect(issuedAfter('firm')).toBe(issue('large', 6).id);
    expect(issuedAfter('firm', 'lost')).toBe(issue('small', 0).id);
  });

  it('is a question that somebody wrote at the beginning, after a lost answer and now and then, while one is left', () => {
    const question = (name: string) => taskOf({ seed: name, only: 'make' }).question;
    const questions = ['one', 'two', 'three'].map((id) => ({
      id,
      skill: 'make',
      question: question(id),
      answer: rightAnswer(question(id)),
    }));
    const written = courseOf(bankSchema.parse({ topics: [{ ...bank.topics[0]!, questions }] }));
    if (!written.ok) throw new Error('refused');
    const circuits = questions.map((each) => fingerprint(each.question.circuit));
    /** Which of them comes after answers of these grades; undefined: a fresh one. */
    const next = (grades: readonly Grade[], seen: readonly string[], left = false): number | undefined => {
      const recall = grades.reduce<Recall>(
        (before, grade, number) => reviewAs(before, grade, AT, `c${number}`),
        newRecall(),
      );
      const task = taskOf({
        course: written.value,
        recalls: new Map([['make', recall]]),
        only: 'make',
        seen: new Set(seen),
        ...(left ? { ideasLeft: () => ['make-for-break', 'nothing-moves'] as const } : {}),
      });
      const at = circuits.indexOf(task.circuit);
      return at < 0 ? undefined : at;
    };
    expect(next([], [])).toBe(0);
    expect(next(['firm'], circuits.slice(0, 1))).toBeUndefined();
    expect(next(['firm', 'lost'], circuits.slice(0, 1))).toBe(1);
    expect(next(['firm', 'lost', 'lost'], circuits.slice(0, 1))).toBeUndefined();
    expect(next(['firm', 'lost', 'firm'], circuits.slice(0, 2))).toBeUndefined();
    expect(next(['firm', 'lost', 'firm', 'firm', 'firm'], circuits.slice(0, 2))).toBe(2);
    // None is put twice.
    expect(next(['firm', 'lost'], circuits)).toBeUndefined();
    // Where two ideas are to be told apart, the circuit that does it goes first.
    expect(next(['firm', 'lost'], circuits.slice(0, 1), true)).toBeUndefined();
  });

  it('grows with success, not with practice', () => {
    /** Devices of twenty circuits after answers of these grades, each so many days after the one before. */
    const size = (...answers: readonly (readonly [Grade, number])[]): number => {
      let at = AT;
      const recall = answers.reduce<Recall>((before, [grade, days], number) => {
        at += days * 24 * 60 * 60_000;
        return reviewAs(before, grade, at, `circuit ${number}`);
      }, newRecall());
      const recalls: Recalls = new Map([['make', recall]]);
      let devices = 0;
      for (let seed = 0; seed < 20; seed++)
        devices += taskOf({ recalls, seed: `g${seed}`, only: 'make' }).question.circuit.devices.length;
      return devices;
    };
    const firm = (days: number) => ['firm', days] as const;
    const lost = (days: number) => ['lost', days] as const;
    const many = Array.from({ length: 12 }, () => lost(0.01));
    expect(size(firm(0), firm(3), firm(10))).toBeGreaterThan(size(firm(0), firm(0.01)));
    expect(size(firm(0), firm(0.01))).toBeGreaterThan(size(lost(0)));
    // Who fails gets the smallest, however often; who fails once gets smaller ones than before.
    expect(size(...many)).toBe(size(lost(0)));
    expect(size(firm(0), firm(3), firm(10), lost(20))).toBeLessThan(size(firm(0), firm(3), firm(10)));
    expect(size(firm(0), firm(3), firm(10), lost(20), firm(0.1), firm(0.1))).toBeGreaterThan(
      size(firm(0), firm(3), firm(10), lost(20)),
    );
  });
});

describe('judging', () => {
  it('of a right answer lets the memory grow, of a blank one not', () => {
    const task = taskOf();
    const given = { id: 'a', learner: 'me', at: AT, help, secondsUsed: task.secondsExpected / 2 };
    const right = judge(task, { ...given, answer: rightAnswer(task.question) }, new Map());
    const blank = judge(task, { ...given, answer: blankAnswer(task.question) }, new Map());
    expect(right.mark).toMatchObject({ share: 1, correct: true, misconceptions: [] });
    expect(['firm', 'sure']).toContain(right.grade);
    expect(blank.mark).toMatchObject({ share: 0, correct: false });
    expect(blank.grade).toBe('lost');
    const stability = ({ recall }: typeof right) => (recall.kind === 'begun' ? recall.stability : 0);
    expect(stability(right)).toBeGreaterThan(stability(blank));
  });

  it('makes a record that the contract describes and that survives JSON', () => {
    const task = taskOf({ only: 'seal' });
    const { record } = judge(
      task,
      { id: 'b', learner: 'me', at: AT, help, secondsUsed: 20, answer: rightAnswer(task.question) },
      new Map(),
    );
    expect(answerRecord.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
  });

  it('counts help: a right answer after a hint is worth less', () => {
    const task = taskOf();
    const given = {
      id: 'c',
      learner: 'me',
      at: AT,
      secondsUsed: task.secondsExpected,
      answer: rightAnswer(task.question),
    };
    const order = ['lost', 'shaky', 'firm', 'sure'];
    const alone = judge(task, { ...given, help }, new Map()).grade;
    const helped = judge(task, { ...given, help: { hint: true, explanation: false } }, new Map()).grade;
    expect(order.indexOf(helped)).toBeLessThan(order.indexOf(alone));
  });
});

describe('a learner who answers everything right', () => {
  it('opens skill after skill, and replaying the records gives the same memory', () => {
    let recalls: Recalls = new Map();
    const records: ReturnType<typeof judge>['record'][] = [];
    const seen = new Set<string>();
    for (let day = 0; day < 12; day++) {
      const recent: string[] = [];
      for (let number = 0; number < 4; number++) {
        const at = AT + day * DAY + number * 60_000;
        const next = nextTask(request({ recalls, at, number: 10 * day + number, recent, seen }));
        if (!next.ok) break;
        const { task } = next;
        const judged = judge(
          task,
          {
            id: `${day}-${number}`,
            learner: 'me',
            at,
            help,
            secondsUsed: task.secondsExpected / 2,
            answer: rightAnswer(task.question),
          },
          recalls,
        );
        recalls = new Map([...recalls, [task.skill, judged.recall]]);
        records.push(judged.record);
        recent.push(task.skill);
        seen.add(task.circuit);
      }
    }
    expect([...recalls.keys()].sort()).toEqual(['make', 'pair', 'seal']);
    expect(replay(historyOf(records))).toEqual(recalls);
    const end = AT + 12 * DAY;
    for (const skill of ['make', 'pair']) expect(isHeld(recallOf(recalls, skill), end - DAY)).toBe(true);
    const { skills, ideas, returns } = summarise(course, records, recalls, end);
    expect(skills.every(({ asked, right }) => asked === right)).toBe(true);
    expect(ideas).toEqual([]);
    expect(returns.map(({ skill }) => skill).sort()).toEqual(['make', 'pair', 'seal']);
    expect(recallOf(new Map(), 'make')).toEqual(newRecall());
  });
});
