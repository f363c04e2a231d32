import { UsageError } from './io.ts';

export interface NumberRange {
  readonly low: number;
  readonly high: number;
  /** A number that would do, for whoever gave one that doesn't. */
  readonly example: number;
}

/** Reads a whole number that was given to an option. */
export function wholeNumber(option: string, text: string, { low, high, example }: NumberRange): number {
  const number = text.trim() === '' ? Number.NaN : Number(text);
  if (Number.isInteger(number) && number >= low && number <= high) return number;
  const wrong = Number.isInteger(number)
    ? `${option} ${text}: ${number < low ? `less than ${low}` : `more than ${high}`}.`
    : `${option} ${text}: not a whole number.`;
  throw new UsageError(wrong, `Give one from ${low} to ${high}, such as ${option} ${example}.`);
}
