/** Refusals that need no values, by the codes that the store gives as well. */
import { ApiFailure } from '../problems.ts';

type Plain =
  | 'sign-in-refused'
  | 'link-refused'
  | 'code-refused'
  | 'first-run-refused'
  | 'name-taken'
  | 'name-alike'
  | 'last-admin'
  | 'class-full';

export const refusal = (code: Plain): ApiFailure => new ApiFailure({ says: code });
