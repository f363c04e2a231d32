/** Writes docs/vocabulary.md: `npm run docs:vocabulary`. */
import { writeFileSync } from 'node:fs';
import { vocabularyOf } from './vocabulary-list.ts';

const SEEDS = 400;

const lists = [...vocabularyOf(SEEDS, 'vocabulary')].sort(([one], [other]) => (one < other ? -1 : 1));
const text = [
  '# What can be read on a generated drawing',
  '',
  'Every title, text and act that the generator can put on a drawing or in a question, to be read in one go by somebody of the trade.',
  '`#` stands for a number. Written by `npm run docs:vocabulary`; a test holds that nothing comes out that isn’t listed. The words are in',
  '`src/generator/vocabulary`.',
  ...lists.flatMap(([name, texts]) => [
    '',
    `## ${name}`,
    '',
    ...[...texts].sort().map((each) => `- ${each}`),
  ]),
  '',
].join('\n');
writeFileSync(new URL('../../docs/vocabulary.md', import.meta.url), text.replaceAll('’', "'"));
