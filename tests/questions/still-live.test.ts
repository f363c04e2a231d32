/** Which terminals are asked about when something was isolated. */
import { expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { freshQuestions } from './fresh.ts';

/** Terminals by the conductor that they are on, read off the wires. */
function conductors({ paths }: Circuit): (terminal: string) => string {
  const of = new Map<string, string>();
  const find = (terminal: string): string => {
    const next = of.get(terminal) ?? terminal;
    return next === terminal ? terminal : find(next);
  };
  for (const { steps } of paths)
    for (const [at, { device, enter }] of steps.entries()) {
      const before = steps[at - 1];
      if (before)
        of.set(find(`${before.device}:${before.leave ?? before.enter}`), find(`${device}:${enter}`));
    }
  return find;
}

it('are no supply’s own, none on a return, and no two on one conductor; live and dead ones among them', () => {
  const questions = freshQuestions('still-live', 25, 1200);
  expect(questions.length).toBe(25);
  for (const question of questions) {
    if (question.kind !== 'still-live') throw new Error(question.kind);
    const { circuit, asked } = question;
    const find = conductors(circuit);
    const names = new Set(circuit.supplies.map(({ name }) => name));
    const returns = new Set(
      circuit.supplies.map(({ name, current }) => find(`${name}:${current === 'DC' ? 'L-' : 'N'}`)),
    );
    expect(asked.length).toBeGreaterThanOrEqual(4);
    expect(asked.length).toBeLessThanOrEqual(6);
    expect(new Set(asked.map(find)).size).toBe(asked.length);
    for (const terminal of asked) {
      expect(names.has(terminal.split(':')[0]!)).toBe(false);
      expect(returns.has(find(terminal))).toBe(false);
    }
  }
});
