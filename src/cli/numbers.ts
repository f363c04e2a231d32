import { type Io, UsageError } from './io.ts';

export interface NumberRange {
  readonly low: number;
  readonly high: number;
  /** A number that would do, for whoever gave one that doesn't. */
  readonly example: number;
}

/** Reads a whole number that was given to an option. */
export function wholeNumber(
  { words: { numbers } }: Pick<Io, 'words'>,
  option: string,
  given: string,
  { low, high, example }: NumberRange,
): number {
  const number = given.trim() === '' ? Number.NaN : Number(given);
  if (Number.isInteger(number) && number >= low && number <= high) return number;
  const wrong = !Number.isInteger(number)
    ? numbers.notWhole({ option, given })
    : number < low
      ? numbers.tooSmall({ option, given, low })
      : numbers.tooLarge({ option, given, high });
  throw new UsageError(wrong, numbers.right({ low, high, example: `${option} ${example}` }));
}
