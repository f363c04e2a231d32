/**
 * The codes of everything that can be wrong with a circuit, its acts and its faults, by what the input is where each is met
 * first. Once given, a code keeps its meaning; a code that is given up is not used again. docs/errors.md says what each
 * means. Drawing rules have their names as codes.
 */
import type { CircuitProblemSaid } from '../words/index.ts';
import { type CodeOf, problemSaying } from '../words/problems.ts';

export const CIRCUIT_CODES = {
  notation: [
    'unknown-line',
    'unknown-word',
    'unexpected-option',
    'repeated-option',
    'missing-option',
    'missing-current',
    'missing-rating',
    'bad-number',
    'missing-unit',
    'unknown-unit',
    'out-of-range',
    'text-too-long',
    'control-character',
    'unclosed-quote',
    'bad-escape',
    'comment-in-line',
    'bad-supply-name',
    'bad-designation',
    'unknown-kind',
    'contact-terminals',
    'repeated-terminal',
    'bad-position',
    'unknown-position',
    'repeated-position',
    'reserved-position',
    'too-many-points',
    'missing-supply',
    'duplicate-supply',
    'duplicate-designation',
    'path-length',
    'bad-stop',
    'missing-terminal',
    'unknown-supply',
    'unknown-designation',
    'unknown-terminal',
    'supply-hop',
    'same-terminal-hop',
    'no-way-through',
    'joins-itself',
    'too-large',
    'too-many-problems',
  ],
  JSON: ['bad-json', 'json-shape', 'duplicate-sheet', 'sheet-not-listed'],
  scenario: [
    'unknown-act',
    'bad-act',
    'act-not-possible',
    'unknown-fault',
    'bad-fault',
    'fault-not-possible',
  ],
} as const satisfies Readonly<Record<string, readonly CircuitCode[]>>;

export type CircuitCode = CodeOf<CircuitProblemSaid['says']>;

export const circuitProblem = problemSaying<CircuitProblemSaid>;
