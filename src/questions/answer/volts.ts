/** Meter readings as they are written, compared and told. */
import type { Checked } from '../../../shared/problem.ts';
import { problemIn, shownWord } from './read-states.ts';

/** `null`: the meter shows nothing. */
export type Reading = number | null;

export const readingText = (reading: Reading): string =>
  reading === null ? 'nothing' : `${Number(reading.toFixed(2))} V`;

/** Whether two readings look the same on a meter: one without a reference shows what 0 V shows. */
export function sameReading(one: Reading, other: Reading, tolerance: number): boolean {
  const near = (volts: number): boolean => Math.abs(volts) <= tolerance;
  if (one === null || other === null) return near(one ?? 0) && near(other ?? 0);
  return Math.abs(one - other) <= tolerance + 1e-9;
}

const NOTHING = /^(?:nothing|none|no(?:\s+(?:reading|voltage|volts))?|floating|blank|-+|null)$/i;
const VOLTS =
  /^(?:about\s+|ca\.?\s+|approx\.?\s+|~\s*)?([+−–-]?\s*\d{1,9}(?:[.,]\d{1,9})?)\s*(m|k)?\s*(?:v(?:olts?)?)?(?:\s*(?:ac|dc))?\.?$/i;

/** Reads `24`, `24 V`, `-24,0 V DC`, `3300 mV`, `nothing`. */
export function readVolts(text: string): Checked<Reading> {
  const bare = text.trim();
  if (bare === '')
    return {
      ok: false,
      problems: [problemIn('answer-missing', 'Nothing was answered.', 'Write the volts, or "nothing".')],
    };
  if (NOTHING.test(bare)) return { ok: true, value: null };
  const match = VOLTS.exec(bare);
  if (!match)
    return {
      ok: false,
      problems: [
        problemIn(
          'answer-not-a-number',
          `${shownWord(bare)} is no reading.`,
          'Write one number of volts, such as 12 V, or "nothing".',
        ),
      ],
    };
  const [, digits = '', unit = ''] = match;
  const number = Number(digits.replace(/[−–]/, '-').replace(/\s/g, '').replace(',', '.'));
  const factor = unit.toLowerCase() === 'm' ? 0.001 : unit.toLowerCase() === 'k' ? 1000 : 1;
  return { ok: true, value: Math.round(number * factor * 1e6) / 1e6 };
}
