/**
 * What decides, held against the solver's state and against a network solved another way: what is said to be open is open and
 * keeps the current away whatever else were closed; what is said to feed something conducts from pole to pole.
 */
import { describe, expect, it } from 'vitest';
import type { QuestionKind, QuestionOf } from '../../shared/question.ts';
import { entriesOf } from '../../src/questions/entries.ts';
import { historyOf } from '../../src/questions/explain/history.ts';
import { explain, rightAnswer } from '../../src/questions/index.ts';
import { completed } from '../../src/questions/kinds/wiring/choices.ts';
import type { ExplainingSaid } from '../../src/words/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { freshQuestions } from './fresh.ts';
import { hold, holdDead, holdJoined, nothingYet, openIn } from './held.ts';

const COUNT = drawn(80);

const aboutOf = ({ family, seed }: { family?: string; seed?: string }): string => `${family}, seed "${seed}"`;

const fresh = <K extends QuestionKind>(kind: K) =>
  freshQuestions(kind, COUNT) as (QuestionOf<K> & { family: string; seed: string })[];

describe('what decides', () => {
  it.each(['lamp-states', 'input-states', 'relay-states', 'sequence'] as const)(
    'is so in the state asked about: %s',
    (kind) => {
      const counted = nothingYet();
      for (const question of fresh(kind)) {
        const about = aboutOf(question);
        const history = historyOf(question.circuit, question.scenario);
        const { decides } = explain(question);
        for (const { key, after, item } of entriesOf(question)) {
          const decision = decides.find((each) => each.item === key)!;
          expect(JSON.stringify(decision.said), about).toContain(item);
          for (const step of [decision, ...decision.behind]) hold(history, step, after, about, counted);
          hold(history, { ...decision, said: decision.brief }, after, about, counted, true);
        }
      }
      expect(counted.ways).toBeGreaterThan(atLeast(COUNT / 2));
      expect(counted.stops).toBeGreaterThan(atLeast(COUNT / 2));
      expect(counted.cuts).toBeGreaterThan(atLeast(COUNT / 4));
      expect(counted.series).toBeGreaterThan(atLeast(COUNT / 20));
    },
  );

  it('is so for everything that a wiring has to do', () => {
    const counted = nothingYet();
    for (const question of fresh('wiring')) {
      const about = aboutOf(question);
      const { choice = -1 } = rightAnswer(question) as { choice?: number };
      const circuit = completed(question, choice);
      const { behind } = explain(question).decides[0]!;
      let number = 0;
      for (const step of behind) {
        const said: ExplainingSaid = step.said.says === 'wanted' ? step.said.told : step.said;
        if (step.said.says === 'wanted') number = step.said.number;
        const { acts } = question.wanted[number - 1]!;
        const history = historyOf(circuit, { ...question.scenario, acts });
        hold(history, { ...step, said }, acts.length, about, counted);
      }
      expect(number, about).toBe(question.wanted.length);
    }
    expect(counted.ways).toBeGreaterThan(atLeast(COUNT));
    expect(counted.cuts).toBeGreaterThan(atLeast(COUNT));
  });

  it('is so of the terminals that stay live, and of those that are dead', () => {
    const counted = nothingYet();
    for (const question of fresh('still-live')) {
      const about = aboutOf(question);
      const history = historyOf(question.circuit, question.scenario);
      const last = question.scenario.acts.length;
      for (const { said, behind } of explain(question).decides) {
        for (const step of behind) hold(history, step, last, about, counted);
        if (said.says === 'live' || said.says === 'liveThrough')
          holdJoined(history, { from: said.pole, to: said.terminal, by: said.by }, about, counted);
        // A conductor that is off is a place, and no contact.
        if (said.says === 'deadOpen' && openIn(said).length === said.open.length)
          holdDead(
            history,
            { terminal: said.terminal, open: openIn(said), besides: said.besides ?? [] },
            about,
            counted,
          );
      }
    }
    expect(counted.ways).toBeGreaterThan(atLeast(COUNT / 2));
    expect(counted.cuts).toBeGreaterThan(atLeast(COUNT / 4));
  });

  it('is so of the points that are measured at', () => {
    const counted = nothingYet();
    for (const question of fresh('meter')) {
      const about = aboutOf(question);
      const history = historyOf(question.circuit, question.scenario);
      const last = question.scenario.acts.length;
      const { said, behind } = explain(question).decides[0]!;
      for (const step of behind) hold(history, step, last, about, counted);
      hold(history, { said, about: [] }, last, about, counted);
      if (said.says !== 'shows') expect.fail(about);
      for (const point of [said.one, said.other])
        if ('by' in point)
          holdJoined(history, { from: point.terminal, to: point.pole, by: point.by }, about, counted);
    }
    expect(counted.ways).toBeGreaterThan(atLeast(COUNT));
    expect(counted.stops).toBeGreaterThan(atLeast(COUNT / 4));
  });
});
