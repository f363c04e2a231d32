/** A question kind is its folder and its lines in the registries: nothing else asks for it by name. */
import { expect, it } from 'vitest';
import { QUESTION_KINDS } from '../../shared/question-kinds.ts';
import { namingsIn, sourceFiles } from './named.ts';

/** Where kinds are at home: their folders, and the registries in which each has its line. */
const HOME = [
  'shared/question-kinds.ts',
  'shared/questions/',
  'src/questions/kinds/',
  'src/questions/registry.ts',
  'src/questions/explain/explainers.ts',
  'src/questions/answer/readers.ts',
  'src/questions/entries.ts',
  'src/banks/blocks/kinds/',
  'src/words/en/questions/',
];

it('no question kind is named outside its own places', () => {
  const files = sourceFiles();
  const home = files.filter((file) => HOME.some((place) => file.startsWith(place)));
  for (const place of HOME)
    expect(
      home.some((file) => file.startsWith(place) && namingsIn(file, QUESTION_KINDS).length > 0),
      place,
    ).toBe(true);
  const named = files
    .filter((file) => !home.includes(file))
    .flatMap((file) => namingsIn(file, QUESTION_KINDS).map(({ line }) => `${file}:${line}`));
  expect(named).toEqual([]);
});
