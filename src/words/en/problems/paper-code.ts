/** What can be wrong with the code of a paper, where somebody types it. */
import { speech } from '../speech.ts';

export const paperCodeProblems = {
  'homework-code-letter': ({ letters }: { letters: string }) => ({
    wrong: `A code has no ${letters} in it.`,
    right: 'It is made of digits and letters without 0, 1, I, L and O; look at the paper once more.',
  }),
  'homework-code-length': ({ length, needed }: { length: number; needed: number }) => ({
    wrong: speech.plural(length, {
      one: 'The code has 1 character.',
      other: `The code has ${length} characters.`,
    }),
    right: `It has ${needed}: three groups of three.`,
  }),
  'homework-code-check': ({ code }: { code: string }) => ({
    wrong: `${code} is no code: a character is wrong, or two have changed places.`,
    right: 'Compare it with the paper, character by character.',
  }),
};
