/** Meter readings as they are written, compared and told. */
import type { Checked } from '../../../../shared/problem.ts';
import type { AnswerSaid, Words } from '../../../words/index.ts';
import { questionProblem } from '../../problem-codes.ts';

/** `null`: the meter shows nothing. */
export type Reading = number | null;

export const readingSaid = (reading: Reading): AnswerSaid =>
  reading === null ? { says: 'nothing' } : { says: 'volts', volts: Number(reading.toFixed(2)) };

/** Whether two readings look the same on a meter: one without a reference shows what 0 V shows. */
export function sameReading(one: Reading, other: Reading, tolerance: number): boolean {
  const near = (volts: number): boolean => Math.abs(volts) <= tolerance;
  if (one === null || other === null) return near(one ?? 0) && near(other ?? 0);
  return Math.abs(one - other) <= tolerance + 1e-9;
}

/** A reading as it is written: a number, what it is a multiple of, the unit and the kind of current. */
const written = ({ about, volts }: Words['typed']): RegExp =>
  new RegExp(
    `^(?:(?:${about.map(escaped).join('|')})\\s+|~\\s*)?([+−–-]?\\s*\\d{1,9}(?:[.,]\\d{1,9})?)\\s*(m|k)?\\s*(?:v|${volts.map(escaped).join('|')})?(?:\\s*(?:ac|dc))?\\.?$`,
    'iu',
  );

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

const saysNothing = (text: string, { noReading }: Words['typed']): boolean =>
  /^-+$/.test(text) || noReading.includes(text.toLowerCase().replace(/\s+/g, ' '));

/** Reads `24`, `24 V`, `-24,0 V DC`, `3300 mV`, `nothing`. */
export function readVolts(text: string, { typed }: Pick<Words, 'typed'>): Checked<Reading> {
  const bare = text.trim();
  if (bare === '') return { ok: false, problems: [questionProblem({ says: 'answer-missing.volts' })] };
  if (saysNothing(bare, typed)) return { ok: true, value: null };
  const match = written(typed).exec(bare);
  if (!match) return { ok: false, problems: [questionProblem({ says: 'answer-not-a-number', word: bare })] };
  const [, digits = '', unit = ''] = match;
  const number = Number(digits.replace(/[−–]/, '-').replace(/\s/g, '').replace(',', '.'));
  const factor = unit.toLowerCase() === 'm' ? 0.001 : unit.toLowerCase() === 'k' ? 1000 : 1;
  return { ok: true, value: Math.round(number * factor * 1e6) / 1e6 };
}
