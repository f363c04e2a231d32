import { beforeEach, describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { laterHandlers } from '../../src/web/engine/later-handlers.ts';
import type { Handlers, Prepared, View } from '../../src/web/engine/messages.ts';
import { Opened } from '../../src/web/engine/opened.ts';
import { practiceHandlers } from '../../src/web/engine/practice-handlers.ts';
import { ownBank } from '../support/own-bank.ts';

const VIEW: View = { width: 'phone', theme: 'light' };
const AT = 1_760_000_000_000;
const DAY = 86_400_000;

let engine: Handlers;

beforeEach(() => {
  const held = new Opened();
  engine = { ...practiceHandlers(held), ...laterHandlers(held) };
  engine.open({ bank: ownBank() });
});

function prepared(number: number, wanted: { only?: string; planned?: readonly string[] } = {}): Prepared {
  const made = engine.next({
    at: AT,
    seed: 'engine',
    number,
    recent: [],
    placement: null,
    view: VIEW,
    ...wanted,
  });
  if ('nothing' in made) throw new Error(made.nothing);
  return made;
}

function answered({ task }: Prepared, id: string) {
  const given = {
    id,
    learner: 'me',
    at: AT,
    answer: rightAnswer(task.question),
    help: { hint: false, explanation: false },
    secondsUsed: 20,
  };
  return engine.judge({ task, given, view: VIEW });
}

const skills = ownBank().topics.flatMap((topic) => topic.skills.map(({ id }) => id));

describe('the engine', () => {
  it('makes a question of every skill, every item of which can be pointed at on the drawing', () => {
    for (const [number, skill] of skills.entries()) {
      const { asked, drawn, task } = prepared(number, { only: skill });
      expect(task.skill).toBe(skill);
      const places = new Set(drawn.sheets.flatMap(({ spots }) => spots.map(({ item }) => item)));
      for (const { about, item } of asked.items)
        expect(
          [...about, item].some((place) => places.has(place)),
          `${skill}: ${item}`,
        ).toBe(true);
    }
  });

  it('marks the right answer right, and its run ends where the question asks', () => {
    for (const [number, skill] of skills.entries()) {
      const question = prepared(number, { only: skill });
      const { judged, drawn } = answered(question, `answer-${number}`);
      expect(judged.mark.correct, skill).toBe(true);
      const items = judged.mark.parts.map(({ item }) => item);
      const { frames } = engine.run({ question: question.task.question, items, view: VIEW });
      expect(frames.at(-1)?.svgs).toEqual(drawn.sheets.map(({ svg }) => svg));
      for (const { svgs, caption } of frames) {
        expect(svgs).toHaveLength(drawn.sheets.length);
        expect(caption).toMatch(/\S/);
      }
    }
  });

  it('brings a question back exactly as it was', () => {
    const first = prepared(0);
    const again = engine.show({ task: JSON.parse(JSON.stringify(first.task)), view: VIEW });
    expect(again).toEqual(first);
  });

  it('remembers answers in whatever order and however often it is told of them', () => {
    const questions = [0, 1, 2].map((number) =>
      answered(prepared(number, { only: skills[number]! }), `answer-${number}`),
    );
    const answers = questions.map(({ judged: { record } }) => ({
      id: record.id,
      skill: record.skill,
      circuit: record.circuit,
      at: record.at,
      attempt: record.attempt,
    }));
    expect(engine.remember({ answers: [answers[2]!, answers[0]!] })).toEqual({ answers: 2 });
    expect(engine.remember({ answers })).toEqual({ answers: 3 });
    const { skills: report } = engine.progress({ at: AT, wishes: null, placement: null });
    const begun = report.filter(({ standing }) => standing === 'begun');
    expect(begun).toHaveLength(3);
    // One answer each proves nothing yet, so no chance is told.
    expect(begun.map(({ chance }) => chance)).toEqual([null, null, null]);
  });

  it('gives no circuit twice', () => {
    const first = prepared(0);
    const { record } = answered(first, 'a').judged;
    engine.remember({ answers: [record] });
    expect(prepared(0, { only: first.task.skill }).task.circuit).not.toBe(first.task.circuit);
  });

  it('says which skills a plan wants today, and asks them first', () => {
    const wishes = { assessmentAt: AT + 30 * DAY, minutesADay: 20, secondsPerQuestion: 45 };
    const planned = engine.planned({ at: AT, wishes, placement: null });
    expect(planned?.length).toBeGreaterThan(0);
    expect(planned).toContain(prepared(0, { planned: planned! }).task.skill);
    expect(
      engine.planned({ at: AT, wishes: { ...wishes, assessmentAt: AT - DAY }, placement: null }),
    ).toBeNull();
  });

  it('works a live circuit: each act it offers changes what it offers next', () => {
    for (const { circuits } of ownBank().topics) {
      for (const { circuit } of circuits) {
        const rest = engine.live({ circuit, acts: [], faults: [], view: VIEW });
        expect(rest.readings.length).toBeGreaterThan(0);
        for (const { act } of rest.acts.filter(({ act: { kind } }) => kind !== 'wait')) {
          const after = engine.live({ circuit, acts: [act], faults: [], view: VIEW });
          expect(after.acts.map(({ words }) => words)).not.toEqual(rest.acts.map(({ words }) => words));
        }
      }
    }
  });

  it('tells a drawing in words without telling what happens', () => {
    const lines = engine.words({ circuit: prepared(0).task.question.circuit });
    expect(lines.length).toBeGreaterThan(2);
    expect(lines.join(' ')).toMatch(/[Aa]t rest/);
    expect(lines.join(' ')).not.toMatch(/is lit|lights|operates/);
  });

  it('reports what is wrong with a notation, and reads it when it is right', () => {
    expect(
      engine.read({ text: 'supply A 24 V AC\n-H1 lamp\nA:L -H1:X1-X9 A:N\n', view: VIEW }).problems.length,
    ).toBeGreaterThan(0);
    const text = '# Lamp\nsupply A 24 V AC\n-F1 breaker\n-H1 lamp green "On"\n\nA:L -F1:1-2 -H1:X1-X2 A:N\n';
    const { circuit, problems } = engine.read({ text, view: VIEW });
    expect(problems).toEqual([]);
    expect((circuit as Circuit).devices).toHaveLength(2);
  });

  it('says in words that no bank has been opened', () => {
    const unopened = practiceHandlers(new Opened());
    expect(() => unopened.placing({ answers: [] })).toThrow('The question bank has not been opened.');
  });
});
