/** What can be answered: the states of things, readings, choices. What was chosen is read by the same words. */
import type { StatementOf } from '../statement.ts';
import { volts } from './text.ts';

export const answers = {
  lit: 'lit',
  dark: 'dark',
  dim: 'dim',
  flashing: 'flashing',
  on: 'on',
  off: 'off',
  weak: 'weak',
  pulsing: 'pulsing',
  '1': '1',
  '0': '0',
  undefined: 'undefined',
  changing: 'changing',
  operated: 'operated',
  rest: 'rest',
  live: 'live',
  dead: 'dead',
  volts: (reading: { volts: number }): string => volts(reading.volts),
  /** A meter without a common reference. */
  nothing: 'nothing',
  noNumber: 'no number',
  pair: ({ first, second }: { first: string; second: string }): string => `${first} and ${second}`,
  /** One that isn't among the choices. */
  choice: ({ number }: { number: number }): string => `choice ${number}`,
  /** Something that is no state, as it was written. */
  written: ({ text }: { text: string }): string => text,
};
export type AnswerSaid = StatementOf<typeof answers>;
