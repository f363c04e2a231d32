/** Two questions written by hand: one answer to the first leaves two wrong ideas open, between which one to the second tells. */
import type { Answer, Question } from '../../shared/question.ts';
import { circuitOf, scenarioOf } from './written.ts';

export const lampsOf = (text: string, does: string, asked: string[]): Question => ({
  kind: 'lamp-states',
  family: 'fixed',
  circuit: circuitOf(text),
  scenario: scenarioOf(does),
  asked,
});

/** Of `-H1`, `-H2` and so on. */
export const lampsAnswered = (...states: string[]): Answer => ({
  kind: 'lamp-states',
  states: Object.fromEntries(states.map((state, index) => [`-H${index + 1}`, state])),
});

/** Who says that all are lit may think that no break contact opens, or that both legs are closed. */
export const legs = lampsOf(
  `
# Ferry ramp: one lamp on each leg, of two poles
supply A 24 V AC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
-H3 lamp
-H4 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:11-12 -H1:X1-X2 A:N
-K1:11-14 -H2:X1-X2 A:N
A:L -K1:21-22 -H3:X1-X2 A:N
-K1:21-24 -H4:X1-X2 A:N`,
  'make -B1',
  ['-H1', '-H2', '-H3', '-H4'],
);
export const BOTH = ['break-never-opens', 'both-legs-closed'] as const;
export const legsAllLit = lampsAnswered('lit', 'lit', 'lit', 'lit');

/** No changeover: who says that all are lit thinks that no break contact opens. */
export const breaks = lampsOf(
  `
# Ice works: compressor contactor and its lamps
supply A 24 V AC
-B1 field-contact make
-K1 contactor 0 main make break break
-H1 lamp
-H2 lamp
-H3 lamp
A:L -B1:13-14 -K1:A1-A2 A:N
A:L -K1:21-22 -H1:X1-X2 A:N
A:L -K1:13-14 -H2:X1-X2 A:N
A:L -K1:31-32 -H3:X1-X2 A:N`,
  'make -B1',
  ['-H1', '-H2', '-H3'],
);
