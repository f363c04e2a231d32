import { UsageError } from './io.ts';

/** Reads a whole number from `low` to `high` given to an option. */
export function wholeNumber(option: string, text: string, low: number, high: number): number {
  const number = Number(text);
  if (Number.isInteger(number) && number >= low && number <= high && text.trim() !== '') return number;
  throw new UsageError(
    `${option} ${text}: not a whole number from ${low} to ${high}.`,
    `For example ${option} ${Math.min(high, Math.max(low, 10))}.`,
  );
}
