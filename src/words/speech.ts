/** What of a language Intl knows: numbers, lists and plurals. */

/** The forms of a word or a sentence that a language's plural rules tell apart; `other` is always one of them. */
export type Forms = Readonly<Partial<Record<Intl.LDMLPluralRule, string>> & { other: string }>;

export interface Speech {
  /** BCP 47, `en-GB`. */
  readonly tag: string;
  /** The language alone, `en`. */
  readonly language: string;
  /** `a, b and c`. */
  readonly and: (items: readonly string[]) => string;
  /** `a, b or c`. */
  readonly or: (items: readonly string[]) => string;
  /** With the decimal sign and the groups of the language; `digits` after the sign at most (3 unless given). */
  readonly number: (value: number, digits?: number) => string;
  /** The form for so many things; `#` in it is the number. */
  readonly plural: (count: number, forms: Forms) => string;
  /** The form for what is number so and so in a row; `#` in it is the number. */
  readonly ordinal: (place: number, forms: Forms) => string;
  /** Moments in days and clock times, in a time zone (the device's own unless given). */
  readonly moment: (at: number, style: Intl.DateTimeFormatOptions) => string;
}

/** Intl's objects are slow to make, and a short command needs none of them. */
function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** The speech of one language. */
export function speechOf(tag: string): Speech {
  const and = once(() => new Intl.ListFormat(tag, { type: 'conjunction' }));
  const or = once(() => new Intl.ListFormat(tag, { type: 'disjunction' }));
  const cardinals = once(() => new Intl.PluralRules(tag));
  const ordinals = once(() => new Intl.PluralRules(tag, { type: 'ordinal' }));
  const numbers = new Map<number, Intl.NumberFormat>();
  const number = (value: number, digits = 3): string => {
    const known = numbers.get(digits) ?? new Intl.NumberFormat(tag, { maximumFractionDigits: digits });
    numbers.set(digits, known);
    return known.format(value);
  };
  // A catalogue keeps its styles as constants: a history of years has thousands of days in one of them.
  const moments = new WeakMap<Intl.DateTimeFormatOptions, Intl.DateTimeFormat>();
  const moment = (at: number, style: Intl.DateTimeFormatOptions): string => {
    const known = moments.get(style) ?? new Intl.DateTimeFormat(tag, style);
    moments.set(style, known);
    return known.format(at);
  };
  const form = (rules: Intl.PluralRules, count: number, forms: Forms): string =>
    (forms[rules.select(count)] ?? forms.other).replaceAll('#', number(count));
  return {
    tag,
    language: tag.split('-', 1)[0]!,
    and: (items) => and().format(items),
    or: (items) => or().format(items),
    number,
    plural: (count, forms) => form(cardinals(), count, forms),
    ordinal: (place, forms) => form(ordinals(), place, forms),
    moment,
  };
}
