/** The banks that come with the program: without a mistake, worth reading, and each answer confirmed. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { FixedQuestion, Topic } from '../../shared/bank.ts';
import { bank as bankSchema } from '../../shared/bank.ts';
import { readBank } from '../../src/banks/index.ts';
import { checkSkills } from '../../src/memory/index.ts';
import { checkQuestion } from '../../src/questions/index.ts';
import { solve } from '../../src/solver/index.ts';
import { mixedRelays } from '../support/extra-low.ts';
import { markAnswer } from '../support/in-english.ts';

const folder = new URL('../../question-banks/', import.meta.url);
const files = readdirSync(folder)
  .filter((name) => name.endsWith('.md'))
  .map((file) => ({ file, text: readFileSync(new URL(file, folder), 'utf8') }));
const read = readBank(files, { tryRecipes: true });
const topics: readonly Topic[] = read.ok ? read.value.topics : [];
const questions = topics.flatMap((topic) =>
  topic.questions.map((fixed): [string, FixedQuestion] => [`${topic.id}/${fixed.id}`, fixed]),
);
const textOf = (topic: Topic): string =>
  topic.lesson
    .flatMap(({ parts }) => parts)
    .flatMap((part) => (part.kind === 'text' ? [part.markdown] : []))
    .join('\n\n');

it('the banks have no mistake, and every recipe gives questions', () => {
  expect(read.ok ? [] : read.problems).toEqual([]);
  expect(topics.length).toBeGreaterThanOrEqual(3);
});

it('the banks keep their contract', () => {
  expect(bankSchema.parse({ topics })).toEqual({ topics });
});

it('the skills of the banks can all be learnt, one after the other', () => {
  const skills = topics.flatMap((topic) =>
    topic.skills.map(({ id, title, needs }) => ({ id, title, needs })),
  );
  const graph = checkSkills(skills);
  expect(graph.ok && graph.value.skills).toEqual(skills);
});

describe.each(topics.map((topic): [string, Topic] => [topic.id, topic]))('%s', (_, topic) => {
  it('has a lesson of 600 to 1,200 words with drawings', () => {
    const words = textOf(topic).split(/\s+/).length;
    expect(words).toBeGreaterThanOrEqual(600);
    expect(words).toBeLessThanOrEqual(1200);
    const drawings = topic.lesson.flatMap(({ parts }) => parts).filter(({ kind }) => kind === 'drawing');
    expect(drawings.length).toBeGreaterThanOrEqual(2);
  });

  it('says that its plants are invented, what goes wrong, and what to mind', () => {
    expect(textOf(topic).replaceAll('\n', ' ')).toContain('All plants here are invented.');
    expect(topic.lesson.map(({ title }) => title)).toContain('How people go wrong');
    const caution = textOf(topic)
      .split('\n\n')
      .find((paragraph) => paragraph.startsWith('>'));
    expect(caution).toMatch(/lock\s+(> )?off/i);
    expect(caution).toMatch(/prove/i);
  });

  it('has extra-low voltage beside 110 or 230 V on one relay only with the words on insulation', () => {
    const circuits = [
      ...topic.circuits.map(({ circuit }) => circuit),
      ...topic.questions.map((q) => q.question.circuit),
    ];
    // IEC 61140: double or reinforced insulation between them (from memory).
    if (circuits.some((circuit) => mixedRelays(circuit).length > 0))
      expect(textOf(topic).replaceAll('\n', ' ')).toMatch(/double or reinforced insulation/);
  });

  it('has low-level contacts and no more than half an ampere in front of electronics', () => {
    const circuits = [
      ...topic.circuits.map(({ circuit }) => circuit),
      ...topic.questions.map((q) => q.question.circuit),
    ];
    for (const { title, supplies, devices, paths } of circuits) {
      const low = supplies.filter(({ volts }) => volts < 12);
      for (const { name } of low) {
        const [, step] = paths.find(({ steps }) => steps[0]!.device === name)!.steps;
        const protection = devices.find((device) => device.name === step!.device)!;
        expect('amps' in protection && protection.amps, `${title} ${name}`).toBeLessThanOrEqual(0.5);
      }
      if (low.length > 0)
        expect(
          devices.some(({ kind, text }) => kind === 'relay' && /: gold contacts$/.test(text ?? '')),
          title,
        ).toBe(true);
    }
  });

  it('cites what can be looked up, and nothing from memory', () => {
    expect(textOf(topic)).not.toMatch(/from memory/);
  });

  it('is laid in one of the invented plants, circuit by circuit', () => {
    const circuits = [
      ...topic.circuits.map(({ circuit }) => circuit),
      ...topic.questions.map((q) => q.question.circuit),
    ];
    for (const { title } of circuits) expect(title).toMatch(/^(Nursery|Ice works|Ferry ramp|Flour line): /);
  });

  it('has a question that somebody wrote for each of its skills, at least four in all', () => {
    expect(topic.questions.length).toBeGreaterThanOrEqual(4);
    expect([...new Set(topic.questions.map(({ skill }) => skill))].toSorted()).toEqual(
      topic.skills.map(({ id }) => id).toSorted(),
    );
  });

  it('shows each of its questions once in the lesson', () => {
    const shown = topic.lesson
      .flatMap(({ parts }) => parts)
      .flatMap((part) => (part.kind === 'question' ? [part.question] : []));
    expect(shown).toEqual(topic.questions.map(({ id }) => id));
  });
});

describe('a question somebody wrote', () => {
  it.each(questions)("has one right answer, the author's: %s", (_, { question, answer, because }) => {
    expect(checkQuestion(question)).toEqual([]);
    const { correct, share } = markAnswer(question, answer);
    expect({ correct, share }).toEqual({ correct: true, share: 1 });
    expect(because?.length).toBeGreaterThan(20);
  });

  // The same, past the marking: what the solver reads off, key by key.
  it.each(
    questions.filter(
      ([
        ,
        {
          question: { kind },
        },
      ]) => ['lamp-states', 'input-states', 'relay-states'].includes(kind),
    ),
  )('is answered with what the solver reads off: %s', (_, { question, answer }) => {
    const { lamps, inputs, coils, outcome } = solve(question.circuit, question.scenario).solution;
    expect(outcome.kind).toBe('steady');
    const states = 'states' in answer ? answer.states : {};
    expect(Object.keys(states).length).toBeGreaterThan(0);
    for (const [item, state] of Object.entries(states)) {
      const coil = coils[item];
      expect(lamps[item] ?? inputs[item] ?? (coil?.operated ? 'operated' : 'rest')).toBe(state);
    }
  });
});
