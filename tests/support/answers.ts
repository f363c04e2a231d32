/** Answers of the size that practice makes, by hand: one circuit in the notation, different devices asked about. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Attempt, Grade } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import { readCircuit } from '../../src/circuit/index.ts';

const TEXT = `# Propagation house: misting
supply A 24 V AC
supply B 24 V DC
-F1 breaker "Control supply"
-S1 push-button make "Mist now"
-S2 push-button break "Stop"
-B1 field-contact make "Leaf dry"
-B2 field-contact make "Tank full"
-K1 relay 2 poles "Mist wanted"
-K2 relay 2 poles "Tank ready"
-Y1 valve "Mist valve"
-H1 lamp green "Misting"
-H2 lamp amber "Tank low"
-A1 inputs 2 24V-2 "Tank ready" "Spare"

A:L -F1:1-2 -S2:11-12 -S1:13-14 -K1:A1-A2 A:N
-S1:13 -K1:11-14 -S1:14
-F1:2 -B1:13-14 -S1:14
-F1:2 -B2:13-14 -K2:A1-A2 A:N
-F1:2 -K1:21-24 -K2:11-14 -Y1:A1-A2 A:N
-Y1:A1 -H1:X1-X2 A:N
-K2:12 -H2:X1-X2 A:N
B:L+ -K2:21-24 -A1:I1-COM B:L-
`;

const misting = ((): Circuit => {
  const reading = readCircuit(TEXT);
  if (!reading.ok) throw new Error(JSON.stringify(reading.problems));
  return reading.value;
})();

export interface Wanted {
  readonly id: string;
  readonly at: number;
  readonly learner?: string;
  readonly skill?: string;
  /** Different circuits prove a skill; the name is all that counts here. */
  readonly circuit?: string;
  readonly share?: 0 | 0.5 | 1;
}

/** Full marks, half, or none for "Which of these lamps are lit?" */
function markOf(share: 0 | 0.5 | 1): Mark {
  return {
    share,
    correct: share === 1,
    parts: [
      {
        item: '-H1',
        given: { says: share > 0 ? 'lit' : 'dark' },
        right: { says: 'lit' },
        correct: share > 0,
      },
      {
        item: '-H2',
        given: { says: share === 1 ? 'dark' : 'lit' },
        right: { says: 'dark' },
        correct: share === 1,
      },
    ],
    misconceptions: share === 1 ? [] : ['both-legs-closed'],
  };
}

const GRADES: Readonly<Record<0 | 0.5 | 1, Grade>> = { 0: 'lost', 0.5: 'lost', 1: 'firm' };

/** An answer, right unless a smaller share is wanted. */
export function answerWith({
  id,
  at,
  learner = 'me',
  skill = 'changeover',
  circuit = `misting-${id}`,
  share = 1,
}: Wanted): AnswerRecord {
  const mark = markOf(share);
  const attempt: Attempt = {
    share,
    help: { hint: false, explanation: false },
    secondsUsed: 30,
    secondsExpected: 40,
  };
  return {
    id,
    learner,
    at,
    skill,
    circuit,
    question: {
      kind: 'lamp-states',
      circuit: misting,
      scenario: {
        start: 'live',
        faults: [],
        acts: [
          { kind: 'make', device: '-B2' },
          { kind: 'press', device: '-S1' },
        ],
      },
      family: 'fixed',
      asked: ['-H1', '-H2'],
    },
    answer: {
      kind: 'lamp-states',
      states: Object.fromEntries(mark.parts.map(({ item, given }) => [item, given!.says])),
    },
    mark,
    attempt,
    grade: GRADES[share],
  };
}

export const DAY = 86_400_000;
/** 2026-03-02, 07:00 UTC. */
export const MORNING = Date.UTC(2026, 2, 2, 7);
