/** Why something is refused: by the code of docs/api.md, or by that and which of its cases it is. */
import type { ApiProblemCode } from '../../../../shared/api-problem.ts';
import type { ProblemSaying } from '../../problems.ts';
import { answers } from './answers.ts';
import { homework } from './homework.ts';
import { people } from './people.ts';
import { requests } from './requests.ts';

export const refusals = { ...requests, ...people, ...homework, ...answers } satisfies Readonly<
  Partial<Record<ApiProblemCode | `${ApiProblemCode}.${string}`, ProblemSaying>>
>;
