/** What is said of problems: every code of every floor has words, and no words are there that no code has. */
import { describe, expect, it } from 'vitest';
import type { Problem } from '../../shared/problem.ts';
import { BANK_CODES } from '../../src/banks/index.ts';
import { CIRCUIT_CODES } from '../../src/circuit/problem-codes.ts';
import { HOMEWORK_CODES, INTERCHANGE_CODES } from '../../src/homework/index.ts';
import { MEMORY_CODES } from '../../src/memory/index.ts';
import { QUESTION_CODES } from '../../src/questions/index.ts';
import { everyRule } from '../../src/solver/index.ts';
import { answering } from '../../src/words/en/answering.ts';
import { english } from '../../src/words/en/core.ts';
import { bankProblems } from '../../src/words/en/problems/banks.ts';
import { circuitProblems } from '../../src/words/en/problems/circuit.ts';
import { homeworkProblems, interchangeProblems } from '../../src/words/en/problems/homework.ts';
import { memoryProblems } from '../../src/words/en/problems/memory.ts';
import { questionProblems } from '../../src/words/en/problems/questions.ts';
import { ruleProblems } from '../../src/words/en/problems/rules.ts';
import { codeOf, problemSaying, tellProblem } from '../../src/words/problems.ts';

const FLOORS = [
  ['circuits', circuitProblems, Object.values(CIRCUIT_CODES).flat()],
  ['drawing rules', ruleProblems, everyRule.map(({ name }) => name)],
  ['questions', questionProblems, QUESTION_CODES],
  ['skills and plans', memoryProblems, MEMORY_CODES],
  ['banks', bankProblems, BANK_CODES],
  ['homework', homeworkProblems, HOMEWORK_CODES],
  ['interchange', interchangeProblems, INTERCHANGE_CODES],
] as const;

describe('the words of problems', () => {
  it.each(FLOORS)('of %s are of just the codes that there are', (_floor, words, codes) => {
    const worded = new Set(Object.keys(words).map((says) => codeOf(says)));
    expect([...worded].sort()).toEqual([...codes].sort());
  });

  it('are of one floor each: none takes the place of another', () => {
    const all = FLOORS.flatMap(([, words]) => Object.keys(words));
    expect(all.length).toBeGreaterThan(200);
    expect(all).toEqual([...new Set(all)]);
    expect(Object.keys(english.problems).sort()).toEqual(all.toSorted());
  });

  it('give every drawing rule its reason', () => {
    expect(Object.keys(english.ruleReasons).sort()).toEqual(everyRule.map(({ name }) => name).sort());
  });
});

describe('a problem', () => {
  const said = {
    says: 'unknown-terminal.ofThatSort',
    name: '-A2',
    terminal: 'COM',
    terminals: ['Q1', 'COM'],
  };

  it('has the code that stands before the dot, and is told at its place', () => {
    const problem = problemSaying(said, { line: 3, column: 7 });
    expect(problem.code).toBe('unknown-terminal');
    expect(tellProblem(english, problem)).toEqual({
      code: 'unknown-terminal',
      line: 3,
      column: 7,
      message: '-A2 has no terminal COM of that sort.',
      hint: 'Its terminals are Q1, COM.',
    });
  });

  it('keeps its values when it goes through JSON, as between server, page and workers', () => {
    const sent = JSON.parse(JSON.stringify(problemSaying(said))) as Problem;
    expect(tellProblem(english, sent)).toEqual(tellProblem(english, problemSaying(said)));
  });

  it('that a part of the words says nothing of is a fault of the program', () => {
    const ofBanks = problemSaying({ says: 'bank-html' });
    expect(tellProblem(english, ofBanks).message).toBe('A lesson has no HTML.');
    expect(() => tellProblem(answering, ofBanks)).toThrow(RangeError);
  });
});
