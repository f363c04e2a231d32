import type { Io } from './io.ts';
import { wrapText } from './style.ts';

/**
 * What stands under a command's help: examples, which stay whole so that they can be copied, and what else there is to
 * know. A test runs every example.
 */
export const helpAfter = (
  { columns }: Pick<Io, 'columns'>,
  examples: readonly string[],
  ...notes: readonly string[]
): string =>
  [
    '',
    'Examples:',
    ...examples.map((example) => `  ${example.replaceAll('\n', '\n      ')}`),
    ...notes.flatMap((note) => ['', wrapText(note, columns)]),
  ].join('\n');
