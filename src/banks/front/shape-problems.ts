/** What zod found wrong with front matter, in a bank author's words and at its place. */
import type { core } from 'zod';
import { anyOf, didYouMean, shown } from '../../circuit/wording.ts';
import type { BankReport } from '../report.ts';
import type { FrontTree } from './yaml-tree.ts';

/** Keys there are, by the key of the list they are in (`''`: the front matter itself). */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  '': ['id', 'title', 'summary', 'order', 'skills'],
  skills: ['id', 'title', 'needs', 'recipes'],
  recipes: ['families', 'kinds', 'size', 'share'],
};

/** What each key holds. */
const MEANING: Readonly<Record<string, string>> = {
  id: 'a name of small letters, digits and hyphens, such as make-and-break (64 characters at most)',
  title: 'a text of one line (120 characters at most)',
  summary: 'a text of one line (300 characters at most)',
  order: "the topic's place among the topics: a whole number from 1 to 10000",
  skills: 'a list of 1 to 50 skills, each with id, title, needs and recipes',
  needs: 'a list of the skills it stands on, such as [make-contact] (20 at most; [] or nothing for none)',
  recipes: 'a list of 1 to 20 recipes, each with families, kinds and size',
  families: 'a list of families of circuits, such as [status-pair] (40 at most)',
  kinds: 'a list of kinds of question, such as [lamp-states]',
  size: 'two whole numbers from 1 to 8, the smallest and the largest circuit, such as [1, 3]',
  share: 'a number above 0, 100 at most; 1 when it is left out',
};

export function reportShape(issues: readonly core.$ZodIssue[], tree: FrontTree, report: BankReport): void {
  for (const issue of issues) {
    const { path } = issue;
    const key = path.findLast((part) => typeof part === 'string') as string | undefined;
    if (issue.code === 'unrecognized_keys') {
      for (const unknown of issue.keys) {
        const known = KEYS[key ?? ''] ?? [];
        report.add(
          'bank-unknown-key',
          tree.keySpotOf([...path, unknown]),
          `There is no key ${shown(unknown)} here.`,
          `${didYouMean(unknown, known)}The keys here are ${anyOf(known, 'and')}.`,
        );
      }
      continue;
    }
    const isMissing = issue.code === 'invalid_type' && valueAt(tree.value, path) === undefined;
    if (key === undefined) {
      report.add(
        'bank-value',
        tree.spotOf(path),
        'The front matter is no list of keys.',
        `Its keys are ${anyOf(KEYS['']!, 'and')}.`,
      );
      continue;
    }
    const what = issue.code === 'invalid_value' ? ` It is one of ${issue.values.join(', ')}.` : '';
    report.add(
      isMissing ? 'bank-missing-key' : 'bank-value',
      tree.spotOf(path),
      isMissing ? `Here the key ${key} is missing.` : `This is no usable value for ${placeName(path)}.`,
      `${key} is ${MEANING[key]}.${what}`,
    );
  }
}

/** `order`, `kinds (item 2)`, `size`. */
function placeName(path: readonly PropertyKey[]): string {
  const at = path.findLastIndex((part) => typeof part === 'string');
  const index = path[at + 1];
  return `${String(path[at])}${typeof index === 'number' ? ` (item ${index + 1})` : ''}`;
}

function valueAt(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (at, part) =>
      typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[part] : undefined,
    value,
  );
}
