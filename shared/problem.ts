/** Something wrong with what somebody wrote: where it is, and what there is to say of it. */
import { z } from 'zod';

/** Where it stands. */
export interface ProblemPlace {
  /** 1-based; absent where the input has no lines (a JSON body, a command line). */
  readonly line?: number | undefined;
  readonly column?: number | undefined;
  /** The file it is in, where there is more than one. */
  readonly file?: string | undefined;
}

export interface Problem extends ProblemPlace {
  /** A stable code from docs/errors.md, such as `unknown-terminal`. */
  readonly code: string;
  /** A statement: its kind is the code, or the code, a dot and which of its sentences; and the values that it brings. */
  readonly said: { readonly says: string };
}

/** A problem told in a language. */
export const problem = z.strictObject({
  code: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  line: z.number().int().positive().optional(),
  column: z.number().int().positive().optional(),
  file: z.string().optional(),
  /** What is wrong. */
  message: z.string(),
  /** What would be right. */
  hint: z.string(),
});

export type ToldProblem = Readonly<z.infer<typeof problem>>;

/** A result that is either whole or refused with reasons, never half. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };
