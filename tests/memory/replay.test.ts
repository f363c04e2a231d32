import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Recall, type SkillAnswer, skillAnswer } from '../../shared/memory.ts';
import { afterAnswer, countsAt, mergeHistories, recallOf, replay } from '../../src/memory/index.ts';
import { arbitraryAnswer, arbitraryHistory, SKILLS, START } from './arbitraries.ts';

/** The states after each answer was taken in on its own and kept as JSON in between, as a store does. */
function kept(history: readonly SkillAnswer[]): ReadonlyMap<string, Recall> {
  const rows = new Map<string, string>();
  for (const answer of history) {
    const row = rows.get(answer.skill);
    const recall: Recall = row === undefined ? { kind: 'new' } : JSON.parse(row);
    rows.set(answer.skill, JSON.stringify(afterAnswer(recall, answer)));
  }
  return new Map([...rows].map(([skill, row]) => [skill, JSON.parse(row)]));
}

describe('a history replayed', () => {
  it('gives the states that were kept answer by answer', () => {
    fc.assert(
      fc.property(arbitraryHistory, (history) => {
        for (const answer of history) expect(skillAnswer.parse(answer)).toEqual(answer);
        expect(replay(history)).toEqual(kept(history));
      }),
    );
  });

  it('gives the states that were kept when the clock jumped to and fro, too', () => {
    fc.assert(
      fc.property(fc.array(arbitraryAnswer, { maxLength: 30 }), (history) => {
        expect(replay(history)).toEqual(kept(history));
      }),
    );
  });

  it('can be cut anywhere: the states of the first part and the rest give the states of the whole', () => {
    fc.assert(
      fc.property(arbitraryHistory, fc.nat(), (history, cut) => {
        const at = history.length === 0 ? 0 : cut % history.length;
        const states = new Map(replay(history.slice(0, at)));
        for (const answer of history.slice(at))
          states.set(answer.skill, afterAnswer(recallOf(states, answer.skill), answer));
        expect(states).toEqual(replay(history));
      }),
    );
  });

  it('does not depend on how the answers of different skills lie among each other', () => {
    fc.assert(
      fc.property(arbitraryHistory, (history) => {
        const bySkill = SKILLS.flatMap((skill) => history.filter((answer) => answer.skill === skill));
        expect(replay(bySkill)).toEqual(replay(history));
      }),
    );
  });

  it('counts an answer that was sent again once', () => {
    fc.assert(
      fc.property(arbitraryHistory, fc.array(fc.nat(), { maxLength: 10 }), (history, again) => {
        const repeated = history.length === 0 ? [] : again.map((at) => history[at % history.length]!);
        expect(replay([...history, ...repeated])).toEqual(replay(history));
      }),
    );
  });

  it('is nothing for an empty history, and a skill without answers is new', () => {
    expect(replay([]).size).toBe(0);
    expect(recallOf(replay([]), 'constructor')).toEqual({ kind: 'new' });
  });
});

describe('histories merged', () => {
  it('are in order of time, each answer once, however they were split', () => {
    fc.assert(
      fc.property(arbitraryHistory, fc.array(fc.boolean(), { maxLength: 40 }), (history, left) => {
        const phone = history.filter((_, index) => left[index] ?? false);
        const terminal = history.filter((answer, index) => !phone.includes(answer) || index % 5 === 0);
        const merged = mergeHistories([phone, terminal]);
        expect(merged.length).toBe(history.length);
        expect(new Set(merged)).toEqual(new Set(history));
        expect(merged.every(({ at }, index) => index === 0 || merged[index - 1]!.at <= at)).toBe(true);
      }),
    );
  });

  it('keep the first of two answers with the same id', () => {
    const [answer] = fc.sample(arbitraryAnswer, 1);
    const other = { ...answer!, at: START };
    expect(mergeHistories([[answer!], [other]])).toEqual([answer]);
  });
});

describe('the moment at which an answer counts', () => {
  it('is when it was given, and not after it arrived', () => {
    const now = Date.UTC(2026, 8, 14);
    expect(countsAt(now, now + 5)).toBe(now);
    expect(countsAt(now + 5, now)).toBe(now);
  });

  it('isn’t bounded by a clock that was never set', () => {
    const made = Date.UTC(2026, 0, 1);
    expect(countsAt(made + 5, made - 1)).toBe(made + 5);
    expect(countsAt(made + 5, made)).toBe(made);
  });
});
