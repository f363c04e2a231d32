/** Sizes of the lettering on pictures and paper, and how wide a text comes out. */
import type { TextRole } from '../scene/types.ts';

/** Advance widths of Helvetica in thousandths, from its published font metrics (from memory), space to tilde. */
const WIDTHS = [
  278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556,
  556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278,
  500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469,
  556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500,
  278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
];
/** Anything else: as wide as the widest Latin letters; beyond Latin and Greek, a full square. */
const OTHER = 800;
const SQUARE = 1050;

/** Height of the letters' em in drawing units: on paper a unit is a quarter millimetre, so 11.5 has capitals of 2 mm. */
export const LETTER_SIZE: Readonly<Record<TextRole, number>> = {
  name: 12.5,
  text: 11.5,
  number: 11.5,
  place: 11.5,
  mark: 11.5,
  rail: 12,
  path: 11.5,
  list: 11.5,
  title: 13,
};

const isBold = (role: TextRole): boolean => role === 'name' || role === 'title';

/** Bold letters are up to a tenth wider; and other systems' sans serif faces run a little wider than Helvetica. */
const widening = (role: TextRole): number => (isBold(role) ? 1.1 : 1.03);

/** Sums of advance widths, of texts measured before. */
const known = new Map<string, number>();
const KEEP = 4000;

function advance(text: string): number {
  let sum = 0;
  for (const char of text) {
    const code = char.codePointAt(0) ?? 0;
    sum += WIDTHS[code - 32] ?? (code < 0x500 ? OTHER : SQUARE);
  }
  return sum / 1000;
}

export function letterWidth(text: string, role: TextRole): number {
  let sum = known.get(text);
  if (sum === undefined) {
    sum = advance(text);
    if (known.size > KEEP) known.clear();
    known.set(text, sum);
  }
  return sum * LETTER_SIZE[role] * widening(role);
}

export const letterHeight = (role: TextRole): number => Math.round(LETTER_SIZE[role] * 1.16);
