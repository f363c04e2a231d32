import type { LineReader } from './line-reader.ts';

/** Every unit of the notation with the name it goes by here. */
const UNITS: Readonly<Record<string, string>> = {
  V: 'V',
  A: 'A',
  W: 'W',
  ms: 'ms',
  s: 's',
  min: 'min',
  ohm: 'ohm',
  kohm: 'kohm',
  Mohm: 'Mohm',
  pole: 'poles',
  poles: 'poles',
  main: 'main',
  mains: 'main',
  terminal: 'terminals',
  terminals: 'terminals',
};
export const UNIT_WORDS: readonly string[] = Object.keys(UNITS);

/** A number with the unit after it: `24 V`, also written `24V`. */
export interface Quantity {
  readonly value: number;
  /** Undefined: no unit follows. */
  readonly unit: string | undefined;
  /** Letters that stand where the unit should and are none. */
  readonly notAUnit: string | undefined;
  /** Words it takes up. */
  readonly words: number;
  readonly column: number;
  readonly source: string;
}

const PATTERN = /^([0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?)([A-Za-z\u03a9]*)$/;

/** The number at this place of the line, with its unit; undefined where the next word is no number. */
export function quantityAt(line: LineReader, offset = 0): Quantity | undefined {
  const word = line.peek(offset);
  const match = word?.kind === 'word' ? PATTERN.exec(word.text) : null;
  if (!word || !match) return undefined;
  const base = { value: Number(match[1]), column: word.column, source: match[1]! };
  const glued = match[2]!;
  if (glued !== '') {
    const unit = Object.hasOwn(UNITS, glued) ? UNITS[glued] : undefined;
    return { ...base, unit, notAUnit: unit ? undefined : glued, words: 1 };
  }
  const next = line.peekWord(offset + 1);
  const unit = next !== undefined && Object.hasOwn(UNITS, next) ? UNITS[next] : undefined;
  if (unit) return { ...base, unit, notAUnit: undefined, words: 2 };
  return {
    ...base,
    unit,
    notAUnit: next && /^[A-Za-z\u03a9]{1,9}$/.test(next) ? next : undefined,
    words: 1,
  };
}

/** Seconds of a time in ms, s or min; undefined for any other unit. */
export function secondsOf({ value, unit }: Quantity): number | undefined {
  switch (unit) {
    case 'ms':
      return value / 1000;
    case 's':
      return value;
    case 'min':
      return value * 60;
    default:
      return undefined;
  }
}
