import { words } from '../../../words.ts';

/** Reads marks as people type them: a comma or a point, nothing where an item was left out. */
export function marksTyped(
  texts: readonly string[],
  places: readonly { readonly marks: number }[],
): { readonly marks: readonly (number | null)[] } | { readonly problem: string; readonly at: number } {
  const marks: (number | null)[] = [];
  for (const [at, text] of texts.entries()) {
    const bare = text.trim();
    if (bare === '') {
      marks.push(null);
      continue;
    }
    const outOf = places[at]?.marks ?? 0;
    const number = /^\d{0,3}([.,]\d{0,2})?$/.test(bare) ? Number(bare.replace(',', '.')) : Number.NaN;
    if (!Number.isFinite(number) || number > outOf)
      return { problem: words('sets').typed.wrong({ number: at + 1, outOf, typed: bare }), at };
    marks.push(number);
  }
  return { marks };
}
