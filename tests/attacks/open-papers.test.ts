/** Answers of a paper that is open, got by having its circuits marked some other way. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { apiRoutes } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import type { Circuit, Step } from '../../shared/circuit.ts';
import type { PaperView, SetView } from '../../shared/homework-views.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { PublicQuestion, Question } from '../../shared/question.ts';
import { fingerprint, randomOf } from '../../src/generator/index.ts';
import { circuitsTold } from '../../src/questions/index.ts';
import { completed } from '../../src/questions/kinds/wiring/choices.ts';
import { rewritten } from '../generator/renaming.ts';
import { CLOSES } from '../homework/course.ts';
import { type ClassServing, classServing, type Person } from '../server/homework/class-serving.ts';
import { answerWith } from '../support/answers.ts';

const { beginPaper, submitPaper, homeworkPapers, markedPaper, guardedCircuits, triedElsewhere, saveAnswers } =
  homeworkRoutes;

/** What anybody can work out from a question as it is sent: its circuit, and what its choices make of it. */
function circuitsIn({ kind, circuit, scenario, asked }: PublicQuestion): readonly string[] {
  const [item] = asked.items;
  const pairs = item?.values.map((pair) => pair.split(' ')) ?? [];
  const own = asked.form === 'choice' ? { ends: item?.about, choices: pairs, wanted: [] } : { asked: [] };
  return circuitsTold({ kind, circuit, scenario, family: 'free', ...own } as unknown as Question);
}

let serving: ClassServing;
let set: SetView;
let learner: Person;
let classmate: Person;
let paper: PaperView;
let questions: readonly Question[];

beforeEach(async () => {
  serving = await classServing(2);
  [learner, classmate] = serving.learners as [Person, Person];
  // Wirings too: their circuits are asked about with a conductor left open.
  set = await serving.issued({ skills: ['status-lamps', 'controller-inputs'], items: 6, attempts: 1 });
  paper = await learner.call(beginPaper, { params: { set: set.set.id } });
  const kept = (await serving.store.homework.paper(paper.id))!;
  questions = kept.paper.items.map(({ question }) => question);
});
afterEach(() => serving.end());

/** A question of one's own making about a circuit: which of its lamps are lit as soon as it is switched on? */
function sneaking(id: string, circuit: Circuit): AnswerRecord {
  const lamps = circuit.devices.flatMap(({ kind, name }) => (kind === 'lamp' ? [name] : []));
  const record = answerWith({ id, at: serving.clock.now, learner: learner.id, skill: 'status-lamps' });
  return {
    ...record,
    circuit: fingerprint(circuit),
    question: {
      kind: 'lamp-states',
      circuit,
      scenario: { start: 'live', faults: [], acts: [] },
      family: 'free',
      asked: lamps,
    },
    answer: { kind: 'lamp-states', states: Object.fromEntries(lamps.map((lamp) => [lamp, 'lit'])) },
  };
}

const withLamps = (): readonly [index: number, circuit: Circuit][] =>
  questions.flatMap(({ circuit }, index) =>
    circuit.devices.some(({ kind }) => kind === 'lamp') ? [[index, circuit]] : [],
  );

/** A circuit with something that lies between two others on a path taken out, to be put back by a choice of its terminals. */
function cutOpen(circuit: Circuit): { opened: Circuit; ends: [string, string]; middle: [string, string] } {
  // Where a path only touches a device, at one terminal, there is nothing to take out.
  const [path, at] = circuit.paths
    .flatMap((each) => each.steps.slice(0, -1).map((step, index) => [each, index, step] as const))
    .find(([, index, { leave }]) => index > 0 && leave !== undefined)!;
  const [before, between, after] = path.steps.slice(at - 1, at + 2) as [Step, Step, Step];
  const parts = [path.steps.slice(0, at), path.steps.slice(at + 1)].filter(({ length }) => length > 1);
  return {
    opened: {
      ...circuit,
      paths: circuit.paths.flatMap((each) =>
        each === path ? parts.map((steps) => ({ ...path, steps })) : [each],
      ),
    },
    ends: [`${before.device}:${before.leave ?? before.enter}`, `${after.device}:${after.enter}`],
    middle: [`${between.device}:${between.enter}`, `${between.device}:${between.leave}`],
  };
}

const send = async (person: Person, answers: readonly AnswerRecord[]) =>
  (await person.call(apiRoutes.keepAnswers, { body: { answers } })).results;

describe('a circuit of an open paper sent as practice', () => {
  it('is neither marked nor kept, however its devices are named, and the tutor sees that it was tried', async () => {
    const random = randomOf('other names');
    const found = withLamps();
    expect(found.length).toBeGreaterThan(2);
    const results = await send(
      learner,
      found.map(([index, circuit]) => sneaking(`sneak-${index}`, rewritten(random, circuit))),
    );
    for (const result of results)
      expect(result).toMatchObject({ result: 'refused', problem: { code: 'on-open-paper' } });
    expect((await learner.call(apiRoutes.answers)).answers).toEqual([]);
    const { papers } = await serving.tutor.call(homeworkPapers, { params: { set: set.set.id } });
    expect(papers.find(({ id }) => id === paper.id)?.tried).toBe(found.length);
    serving.clock.now = CLOSES;
    // Nothing of it was handed in: marks typed from paper make a marked one of it.
    await serving.tutor.call(homeworkRoutes.typeMarks, {
      params: { set: set.set.id },
      body: { code: papers.find(({ id }) => id === paper.id)!.code, marks: questions.map(() => 0) },
    });
    const marked = await serving.tutor.call(markedPaper, { params: { paper: paper.id } });
    expect(marked.tried.map(({ item, place, times }) => [item, place, times])).toEqual(
      found.map(([index]) => [index, 'practice', 1]),
    );
  });

  it('is known with the open conductor of a wiring put on either of its choices', async () => {
    const wirings = questions.flatMap((question) => (question.kind === 'wiring' ? [question] : []));
    expect(wirings.length).toBeGreaterThan(0);
    const tries = wirings.flatMap((question, index) =>
      question.choices.map((_, choice) => sneaking(`w-${index}-${choice}`, completed(question, choice))),
    );
    for (const result of await send(learner, tries)) expect(result.result).toBe('refused');
  });

  it('is known inside a wiring whose choices make the circuit whole again', async () => {
    const found = withLamps();
    const records = found.map(([index, circuit]) => {
      const { opened, ends, middle } = cutOpen(circuit);
      const whole = sneaking(`whole-${index}`, circuit);
      const lamp = circuit.devices.find(({ kind }) => kind === 'lamp')!.name;
      const question: Question = {
        kind: 'wiring',
        circuit: opened,
        scenario: whole.question.scenario,
        family: 'free',
        ends,
        choices: [middle, [middle[1], middle[0]]],
        wanted: [{ acts: [], load: lamp, state: 'lit' }],
      };
      const answer = { kind: 'wiring', choice: 0 } as const;
      return { ...whole, circuit: fingerprint(opened), question, answer };
    });
    for (const result of await send(learner, records))
      expect(result).toMatchObject({ result: 'refused', problem: { code: 'on-open-paper' } });
  });

  it('is marked like any other once the paper is handed in, and for whom it is not on an open paper', async () => {
    const [, circuit] = withLamps()[0]!;
    const record = sneaking('mine', circuit);
    const theirs = { ...record, learner: classmate.id };
    expect(await send(classmate, [theirs])).toMatchObject([{ result: 'kept' }]);
    await learner.call(submitPaper, { params: { paper: paper.id } });
    expect(await send(learner, [record])).toMatchObject([{ result: 'kept' }]);
  });

  it('does not hold up the answers beside it', async () => {
    const other = answerWith({ id: 'beside', at: serving.clock.now, learner: learner.id });
    const [, circuit] = withLamps()[0]!;
    expect(await send(learner, [sneaking('sneak', circuit), other])).toMatchObject([
      { result: 'refused' },
      { result: 'kept', id: 'beside' },
    ]);
  });
});

describe('what the page is told', () => {
  it('are the circuits of one’s own open papers, and that one was tried reaches the tutor', async () => {
    const told = await learner.call(guardedCircuits);
    expect(told.papers).toMatchObject([{ paper: paper.id, title: set.set.title, until: CLOSES }]);
    const own = questions.map(({ circuit }) => fingerprint(circuit));
    expect(told.papers[0]!.circuits).toEqual(expect.arrayContaining(own));
    // Nothing but what anybody can work out from the paper as it is sent.
    const sent = paper.paper.items.flatMap(({ question }) => circuitsIn(question));
    expect(new Set(told.papers[0]!.circuits)).toEqual(new Set(sent));
    expect((await classmate.call(guardedCircuits)).papers).toEqual([]);
    const body = { circuit: own[1]!, place: 'write' };
    for (let times = 0; times < 2; times++) await learner.call(triedElsewhere, { body });
    // Of somebody else’s paper nothing is noted.
    await classmate.call(triedElsewhere, { body });
    const item = { id: 'one', item: 0, answer: { kind: questions[0]!.kind, states: {} } };
    await learner.ask(saveAnswers, { params: { paper: paper.id }, body: { answers: [item] } });
    await learner.call(submitPaper, { params: { paper: paper.id } });
    const marked = await serving.tutor.call(markedPaper, { params: { paper: paper.id } });
    expect(marked.tried).toMatchObject([{ item: 1, place: 'write', times: 2 }]);
    expect((await learner.call(guardedCircuits)).papers).toEqual([]);
  });

  it('are no circuits of a set that has not opened', async () => {
    serving.clock.now = set.set.opensAt - 1;
    expect((await learner.call(guardedCircuits)).papers).toEqual([]);
    const [, circuit] = withLamps()[0]!;
    expect(await send(learner, [sneaking('early', circuit)])).toMatchObject([{ result: 'refused' }]);
  });
});
