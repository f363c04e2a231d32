/** Something wrong with what somebody wrote: where, what, and what would be right. */
import { z } from 'zod';

export const problem = z.strictObject({
  /** A stable code from docs/errors.md, such as `unknown-terminal`. */
  code: z.string().regex(/^[a-z0-9]+(-[a-z0-9]+)*$/),
  /** 1-based; absent where the input has no lines (a JSON body, a command line). */
  line: z.number().int().positive().optional(),
  column: z.number().int().positive().optional(),
  /** The file it is in, where there is more than one. */
  file: z.string().optional(),
  /** What is wrong. */
  message: z.string(),
  /** What would be right. */
  hint: z.string(),
});

export type Problem = Readonly<z.infer<typeof problem>>;

/** A result that is either whole or refused with reasons, never half. */
export type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };
