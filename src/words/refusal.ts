/** Refusals as data: which one it is and its values; a catalogue says what is wrong, and what would be right. */
import type { Saying, ValuesOf } from './statement.ts';

/** How one refusal is told. */
export interface Refusing {
  readonly wrong: Saying;
  readonly right: Saying;
}

/** Everything that can be refused with these. */
export type RefusalOf<S extends object> = {
  readonly [K in keyof S & string]: { readonly says: K } & (S[K] extends {
    readonly wrong: infer W;
    readonly right: infer R;
  }
    ? ValuesOf<W> & ValuesOf<R>
    : never);
}[keyof S & string];

const said = (saying: Saying, values: unknown): string =>
  typeof saying === 'function' ? saying(values as never) : saying;

/** A refusal in words. */
export function tellRefusal<S extends object>(
  refusals: S,
  refusal: RefusalOf<S> & { readonly says: string },
): { readonly message: string; readonly hint: string } {
  const { wrong, right } = (refusals as Readonly<Record<string, Refusing>>)[refusal.says]!;
  return { message: said(wrong, refusal), hint: said(right, refusal) };
}
