/**
 * What there is to say, as data. A statement names its kind in `says` and brings the values that its sentence needs; a
 * catalogue has a sentence for every kind. Which kinds there are, and which values each needs, the English catalogue
 * defines: a statement that it couldn't say doesn't compile, and neither does another language with one missing.
 */

/** How one kind of statement is said: a text, or what makes it of the statement's values. */
export type Saying = string | ((values: never) => string);

/** The sentences of one subject, by kind of statement. */
export type Sayings = Readonly<Record<string, Saying>>;

/** The values that one saying needs. */
type ValuesOf<S> = S extends (values: infer V) => unknown ? V : unknown;

/** Everything that these sayings can say. */
export type StatementOf<S extends object> = {
  readonly [K in keyof S & string]: { readonly says: K } & ValuesOf<S[K]>;
}[keyof S & string];

/** A statement of whatever subject, where only its kind matters. */
export interface Said {
  readonly says: string;
}

/** The sentence for a statement. */
export function say<S extends object>(sayings: S, statement: StatementOf<S> & Said): string {
  const saying = (sayings as Sayings)[statement.says];
  return typeof saying === 'function' ? saying(statement as never) : saying!;
}
