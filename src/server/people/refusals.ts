/** Refusals that have the same words wherever they come from. */
import type { ApiProblemCode } from '../../../shared/api.ts';
import { ApiFailure } from '../problems.ts';

const WORDS = {
  'sign-in-refused': [
    'The name or the password is wrong.',
    'Try again; when the password is forgotten, ask your tutor for a link.',
  ],
  'link-refused': [
    'This link no longer works, or never did.',
    'A link works once, for seven days, until another one is made. Ask your tutor for a new one.',
  ],
  'code-refused': [
    'No class can be joined with this code.',
    'Look at the slip again, or ask your tutor whether the class may still be joined.',
  ],
  'first-run-refused': [
    'The key is wrong, or there is an administrator already.',
    'The server prints the key when it starts, until there is an administrator.',
  ],
  'name-taken': ['Somebody else signs in with this name.', 'Choose another one.'],
  'name-alike': [
    'Somebody in this class has a name that looks the same.',
    'Add an initial or a second name, so that both can be told apart.',
  ],
  'last-admin': ['There would be no administrator left.', 'Make somebody else an administrator first.'],
  'class-full': ['The class would have more than 1,000 learners.', 'Make another class.'],
} as const satisfies Partial<Record<ApiProblemCode, readonly [message: string, hint: string]>>;

export const refusal = (code: keyof typeof WORDS): ApiFailure =>
  new ApiFailure(code, WORDS[code][0], WORDS[code][1]);
