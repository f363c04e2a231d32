import { beforeEach, describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Answer, Question } from '../../shared/question.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { fingerprint, randomOf } from '../../src/generator/index.ts';
import { lineOf } from '../../src/practice/index.ts';
import { answeredApart, blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import { solve } from '../../src/solver/index.ts';
import { laterHandlers } from '../../src/web/engine/later-handlers.ts';
import type { Handlers, Prepared, View } from '../../src/web/engine/messages.ts';
import { OnOpenPaper } from '../../src/web/engine/on-open-paper.ts';
import { Opened } from '../../src/web/engine/opened.ts';
import { practiceHandlers } from '../../src/web/engine/practice-handlers.ts';
import { english } from '../../src/words/en/core.ts';
import { everyKind } from '../browser/support/every-kind.ts';
import { rewritten } from '../generator/renaming.ts';
import { ownBank } from '../support/own-bank.ts';
import { BOTH, breaks, lampsAnswered, legs, legsAllLit } from '../support/two-ideas.ts';

const VIEW: View = { width: 'phone', theme: 'light' };
const AT = 1_760_000_000_000;
const DAY = 86_400_000;

let engine: Handlers;

beforeEach(() => {
  const held = new Opened(english);
  engine = { ...practiceHandlers(held), ...laterHandlers(held, english) };
  engine.open({ bank: ownBank() });
});

async function prepared(
  number: number,
  wanted: { only?: string; planned?: readonly string[] } = {},
): Promise<Prepared> {
  const made = await engine.next({
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

/** Left out whole: lost. */
function leftOut({ task }: Prepared, id: string, earlier: readonly AnswerRecord[]) {
  const given = {
    id,
    learner: 'me',
    at: AT,
    answer: blankAnswer(task.question),
    help: { hint: false, explanation: false },
    secondsUsed: 20,
  };
  return engine.judge({ task, given, earlier, view: VIEW });
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
  return engine.judge({ task, given, earlier: [], view: VIEW });
}

const skills = ownBank().topics.flatMap((topic) => topic.skills.map(({ id }) => id));

describe('the engine', () => {
  it('makes a question of every skill, every item of which can be pointed at on the drawing', async () => {
    for (const [number, skill] of skills.entries()) {
      const { asked, drawn, task } = await prepared(number, { only: skill });
      expect(task.skill).toBe(skill);
      const places = new Set(drawn.sheets.flatMap(({ spots }) => spots.map(({ item }) => item)));
      for (const { about, item } of asked.items)
        expect(
          [...about, item].some((place) => places.has(place)),
          `${skill}: ${item}`,
        ).toBe(true);
    }
  });

  it('marks the right answer right, and its run ends where the question asks', async () => {
    for (const [number, skill] of skills.entries()) {
      const question = await prepared(number, { only: skill });
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

  it('brings a question back exactly as it was', async () => {
    const first = await prepared(0);
    const again = await engine.show({ task: JSON.parse(JSON.stringify(first.task)), view: VIEW });
    expect(again).toEqual(first);
  });

  it('remembers answers in whatever order and however often it is told of them', async () => {
    const put = await Promise.all([0, 1, 2].map((number) => prepared(number, { only: skills[number]! })));
    const questions = put.map((question, number) => answered(question, `answer-${number}`));
    const answers = questions.map(({ judged: { record } }) => ({
      id: record.id,
      skill: record.skill,
      circuit: record.circuit,
      at: record.at,
      attempt: record.attempt,
      number: null,
    }));
    expect(engine.remember({ answers: [answers[2]!, answers[0]!] })).toEqual({ answers: 2 });
    expect(engine.remember({ answers })).toEqual({ answers: 3 });
    const { skills: report } = engine.progress({ at: AT, wishes: null, placement: null });
    const begun = report.filter(({ standing }) => standing === 'begun');
    expect(begun).toHaveLength(3);
    // One answer each proves nothing yet, so no chance is told.
    expect(begun.map(({ chance }) => chance)).toEqual([null, null, null]);
  });

  it('says what is to be expected after three answers though they show nothing, and that little of what was lost', async () => {
    const put = await Promise.all([0, 1, 2].map((number) => prepared(number, { only: skills[0]! })));
    const records = put.map((question, number) => leftOut(question, `l${number}`, []).judged.record);
    const expected = () => engine.progress({ at: AT, wishes: null, placement: null }).skills[0]!.chance;
    engine.remember({ answers: records.slice(0, 2).map(lineOf) });
    expect(expected()).toBeNull();
    engine.remember({ answers: records.map(lineOf) });
    expect(expected()).toBeGreaterThan(0);
    expect(expected()).toBeLessThan(0.5);
    const wishes = { assessmentAt: AT + 20 * DAY, minutesADay: 30, secondsPerQuestion: 60 };
    const { plan } = engine.progress({ at: AT, wishes, placement: null });
    if (!plan || 'problem' in plan) throw new Error('no plan');
    // The weakest first.
    const shares = plan.notReady.map(({ share }) => share);
    expect(shares).toEqual(shares.toSorted((one, other) => one - other));
    expect(plan.average).toBeLessThan(0.9);
  });

  it('says of a skill that it goes wrong with the second lost answer in a row, looked at again as well', async () => {
    const [one, two] = await Promise.all([0, 1].map((number) => prepared(number, { only: skills[0]! })));
    const first = leftOut(one!, 'first', []);
    expect(first.goesWrong).toBe(false);
    const earlier = [first.judged.record];
    expect(leftOut(one!, 'first', earlier).goesWrong).toBe(false);
    const second = leftOut(two!, 'second', earlier);
    expect(second.goesWrong).toBe(true);
    expect(leftOut(two!, 'second', [...earlier, second.judged.record]).goesWrong).toBe(true);
  });

  it('gives no circuit twice', async () => {
    const first = await prepared(0);
    const { record } = answered(first, 'a').judged;
    engine.remember({ answers: [lineOf(record)] });
    expect((await prepared(0, { only: first.task.skill })).task.circuit).not.toBe(first.task.circuit);
  });

  it('says which skills a plan wants today, and asks them first', async () => {
    const wishes = { assessmentAt: AT + 30 * DAY, minutesADay: 20, secondsPerQuestion: 45 };
    const planned = engine.planned({ at: AT, wishes, placement: null });
    expect(planned?.length).toBeGreaterThan(0);
    expect(planned).toContain((await prepared(0, { planned: planned! })).task.skill);
    expect(
      engine.planned({ at: AT, wishes: { ...wishes, assessmentAt: AT - DAY }, placement: null }),
    ).toBeNull();
  });

  it('begins no more skills a day than the learner has set', async () => {
    const none = await engine.next({
      at: AT,
      seed: 'engine',
      number: 0,
      recent: [],
      placement: null,
      newADay: 0,
      view: VIEW,
    });
    expect(none).toHaveProperty('nothing');
    const wishes = { assessmentAt: AT + 30 * DAY, minutesADay: 60, secondsPerQuestion: 45 };
    const [few, many] = [1, 6].map(
      (newADay) => engine.planned({ at: AT, wishes, placement: null, newADay })!.length,
    );
    expect(few).toBe(1);
    expect(many).toBeGreaterThan(1);
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

  it('has every terminal of a wiring to choose from on the drawing, and shows it connected with the mark', async () => {
    const wiring = [...everyKind().values()].find(({ question }) => question.kind === 'wiring');
    if (wiring?.question.kind !== 'wiring') throw new Error('no wiring');
    const { drawn } = await engine.show({ task: wiring, view: VIEW });
    const places = drawn.sheets.flatMap(({ spots }) => spots.map(({ item }) => item));
    for (const terminal of [...wiring.question.choices.flat(), ...wiring.question.ends])
      expect(places).toContain(terminal);
    const given = {
      id: 'a',
      learner: 'me',
      at: AT,
      answer: { kind: 'wiring' as const, choice: 0 },
      help: { hint: false, explanation: false },
      secondsUsed: 20,
    };
    const { circuit, scenario } = engine.judge({ task: wiring, given, earlier: [], view: VIEW });
    const { load, state } = wiring.question.wanted.at(-1)!;
    const shown = solve(circuit, scenario).solution;
    expect({ ...shown.lamps, ...shown.inputs }[load]).toBe(state);
  });

  it('draws a meter on its two points, over no symbol and no text, and reads what circuit theory says', () => {
    const text = `# Two supplies
supply A 24 V AC earthed
supply B 3.3 V DC
-F1 breaker
-F2 fuse
-K1 relay 2 poles
-H1 lamp green "On"
-S1 push-button make black "On"
A:L -F1:1-2 -S1:13-14 -K1:A1-A2 A:N
-F1:2 -K1:11-12 -H1:X1-X2 A:N
B:L+ -F2:1-2 -K1:21-24 B:L-
`;
    const { circuit, problems } = engine.read({ text, view: VIEW });
    if (!circuit) throw new Error(JSON.stringify(problems));
    const measured = (meter: [string, string]) =>
      engine.live({ circuit, acts: [], faults: [], meter, view: VIEW });
    // Kirchhoff: across a lit lamp the supply; along one closed conductor nothing; a meter for AC has no sign.
    expect(measured(['-H1:X1', '-H1:X2']).meter).toEqual({ volts: 24 });
    expect(measured(['-H1:X2', '-H1:X1']).meter).toEqual({ volts: 24 });
    expect(measured(['-F1:2', '-K1:12']).meter).toEqual({ volts: 0 });
    expect(measured(['B:L+', 'B:L-']).meter).toEqual({ volts: 3.3 });
    expect(measured(['B:L-', 'B:L+']).meter).toEqual({ volts: -3.3 });
    // Isolated supplies have no common reference.
    expect(measured(['B:L+', 'A:N']).meter).toEqual({ volts: null });
    const [sheet] = measured(['-H1:X1', '-H1:X2']).drawn.sheets;
    const { x, y, width, height } = sheet!.meter!;
    for (const spot of sheet!.spots) {
      const apart =
        Math.abs(x - (spot.x + spot.width / 2) * sheet!.width) >
          (width + spot.width * sheet!.width) / 2 - 1 ||
        Math.abs(y - (spot.y + spot.height / 2) * sheet!.height) >
          (height + spot.height * sheet!.height) / 2 - 1;
      expect(apart, spot.item).toBe(true);
    }
    const broken = engine.live({
      circuit,
      acts: [],
      faults: [{ kind: 'loose', at: '-H1:X1' }],
      meter: ['-K1:12', '-H1:X1'],
      view: VIEW,
    });
    expect(broken.readings.find(({ item }) => item === '-H1')?.state).toBe('dark');
    // Over a break of the only way stands the whole supply: the lamp drops nothing.
    expect(broken.meter).toEqual({ volts: 24 });
  });

  it('has a place to touch near every terminal of a live circuit, none so close that a finger takes another', () => {
    for (const { circuits } of ownBank().topics)
      for (const { circuit } of circuits) {
        const { points, drawn } = engine.live({ circuit, acts: [], faults: [], view: VIEW });
        const wired = new Set(
          circuit.paths.flatMap(({ steps }) =>
            steps.flatMap(({ device, enter, leave }) =>
              [enter, ...(leave ? [leave] : [])].map((name) => `${device}:${name}`),
            ),
          ),
        );
        points.forEach((places, index) => {
          const { width, height } = drawn.sheets[index]!;
          const at = places.map((spot) => ({
            item: spot.item,
            x: (spot.x + spot.width / 2) * width + (spot.aside ?? 0),
            y: (spot.y + spot.height / 2) * height,
          }));
          for (const [first, one] of at.entries())
            for (const other of at.slice(first + 1))
              expect(
                Math.max(Math.abs(one.x - other.x), Math.abs(one.y - other.y)),
                `${circuit.title}: ${one.item} ${other.item}`,
              ).toBeGreaterThanOrEqual(24);
        });
        expect(points.flat().every(({ item }) => wired.has(item))).toBe(true);
      }
  });

  it('puts a meter on the drawing of a question that asks for a reading, and on no other', async () => {
    for (const [kind, task] of everyKind()) {
      const { drawn } = await engine.show({ task, view: VIEW });
      const meters = drawn.sheets.filter(({ meter }) => meter !== undefined);
      expect(meters, kind).toHaveLength(kind === 'meter' ? 1 : 0);
    }
  });

  it('tells a drawing in words without telling what happens', async () => {
    const lines = engine.words({ circuit: (await prepared(0)).task.question.circuit });
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

  it('has to have a bank opened', () => {
    const unopened = laterHandlers(new Opened(english), english);
    expect(() => unopened.placing({ answers: [] })).toThrow(RangeError);
  });
});

describe('the ideas behind an answer', () => {
  const answered = (question: Question, id: string, answer: Answer, earlier: readonly AnswerRecord[] = []) =>
    engine.judge({
      task: {
        skill: 'changeover-legs',
        why: 'due',
        question,
        circuit: fingerprint(question.circuit),
        secondsExpected: 30,
      },
      given: {
        id,
        learner: 'me',
        at: AT,
        answer,
        help: { hint: false, explanation: false },
        secondsUsed: 20,
      },
      earlier,
      view: VIEW,
    });
  const told = ({ mark }: ReturnType<typeof answered>): string[] => mark.misconceptions.map(({ id }) => id);

  it('are told in the light of the answers before, and kept as this one by itself says', () => {
    expect(told(answered(legs, 'a', legsAllLit))).toEqual(BOTH);
    const before = answered(breaks, 'b', lampsAnswered('lit', 'lit', 'lit')).judged.record;
    const now = answered(legs, 'c', legsAllLit, [before]);
    expect(told(now)).toEqual(['break-never-opens']);
    expect(now.judged.mark.misconceptions).toEqual(BOTH);
    // Drawn anew it is among the answers that are kept, and doesn't speak for itself; those of another skill speak for nothing.
    expect(told(answered(legs, 'c', legsAllLit, [before, now.judged.record]))).toEqual(['break-never-opens']);
    expect(told(answered(legs, 'd', legsAllLit, [{ ...before, skill: 'make-contact' }]))).toEqual(BOTH);
  });

  it('where two are left bring a question that tells them apart, until one is answered', async () => {
    const nextOf = (numbers: readonly number[]) =>
      Promise.all(
        numbers.map(async (number) => (await prepared(number, { only: 'changeover-legs' })).task.question),
      );
    const apart = async (numbers: readonly number[]) =>
      (await nextOf(numbers)).flatMap((question, number) =>
        answeredApart(question, ...BOTH) ? [number] : [],
      );
    const { record } = answered(breaks, 'first', lampsAnswered('dark', 'lit', 'dark')).judged;
    engine.remember({ answers: [lineOf(record)] });
    const numbers = Array.from({ length: 12 }, (_, number) => number);
    const plain = await apart(numbers);
    expect(plain.length).toBeLessThan(numbers.length);
    answered(legs, 'second', legsAllLit);
    expect(await apart(numbers)).toEqual(numbers);
    answered(legs, 'third', lampsAnswered('dark', 'lit', 'dark', 'lit'));
    expect(await apart(numbers)).toEqual(plain);
  });
});

describe('circuits of open papers', () => {
  const guarded = OnOpenPaper;

  it('are neither marked, run, drawn in a state nor hinted at, however they are named', async () => {
    const { task } = await prepared(0, { only: skills[1]! });
    const other = rewritten(randomOf('other names'), task.question.circuit);
    const question = { ...task.question, circuit: other } as typeof task.question;
    engine.guard({ circuits: [task.circuit] });
    const named: Scenario = { start: 'live', faults: [], acts: [] };
    const given = {
      id: 'sneak',
      learner: 'me',
      at: AT,
      answer: rightAnswer(task.question),
      help: { hint: false, explanation: false },
      secondsUsed: 1,
    };
    for (const circuit of [task.question.circuit, other]) {
      expect(() => engine.live({ circuit, acts: [], faults: [], view: VIEW })).toThrow(guarded);
      expect(() => engine.timing({ circuit, scenario: named, view: VIEW })).toThrow(guarded);
      expect(() => engine.draw({ circuit, scenario: named, view: VIEW })).toThrow(guarded);
      // At rest there is nothing in it that the paper doesn't show.
      expect(engine.draw({ circuit, scenario: null, view: VIEW }).sheets.length).toBeGreaterThan(0);
    }
    for (const asked of [task.question, question]) {
      expect(() =>
        engine.judge({ task: { ...task, question: asked }, given, earlier: [], view: VIEW }),
      ).toThrow(guarded);
      expect(() => engine.hint({ task: { ...task, question: asked } })).toThrow(guarded);
      expect(() => engine.run({ question: asked, items: [], view: VIEW })).toThrow(guarded);
      expect(() => engine.mark({ question: asked, answer: given.answer })).toThrow(guarded);
    }
    engine.guard({ circuits: [] });
    expect(engine.live({ circuit: other, acts: [], faults: [], view: VIEW }).readings.length).toBeGreaterThan(
      0,
    );
  });

  it('are not asked in practice', async () => {
    const first = await prepared(3, { only: skills[2]! });
    engine.guard({ circuits: [first.task.circuit] });
    expect((await prepared(3, { only: skills[2]! })).task.circuit).not.toBe(first.task.circuit);
  });
});
