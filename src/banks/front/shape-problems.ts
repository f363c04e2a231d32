/** What zod found wrong with front matter, in a bank author's words and at its place. */
import type { core } from 'zod';
import { nearest } from '../../circuit/index.ts';
import { valueAt } from '../../words/form-said.ts';
import type { FrontKey } from '../../words/index.ts';
import type { BankReport } from '../report.ts';
import type { FrontTree } from './yaml-tree.ts';

/** Keys there are, by the key of the list they are in (`''`: the front matter itself). */
const KEYS: Readonly<Record<string, readonly string[]>> = {
  '': ['id', 'language', 'title', 'summary', 'order', 'skills'],
  skills: ['id', 'title', 'needs', 'recipes', 'lesson'],
  recipes: ['families', 'kinds', 'size', 'happens', 'share'],
};

export function reportShape(issues: readonly core.$ZodIssue[], tree: FrontTree, report: BankReport): void {
  for (const issue of issues) {
    const { path } = issue;
    const key = path.findLast((part) => typeof part === 'string') as FrontKey | undefined;
    if (issue.code === 'unrecognized_keys') {
      for (const unknown of issue.keys) {
        const known = KEYS[key ?? ''] ?? [];
        report.add(
          { says: 'bank-unknown-key.front', key: unknown, meant: nearest(unknown, known), keys: known },
          tree.keyPositionOf([...path, unknown]),
        );
      }
      continue;
    }
    const isMissing = issue.code === 'invalid_type' && valueAt(tree.value, path) === undefined;
    if (key === undefined) {
      report.add({ says: 'bank-value.front', keys: KEYS['']! }, tree.positionOf(path));
      continue;
    }
    const of = { key, choices: issue.code === 'invalid_value' ? issue.values.map(String) : [] };
    const index = path[path.lastIndexOf(key) + 1];
    report.add(
      isMissing
        ? { says: 'bank-missing-key.front', ...of }
        : typeof index === 'number'
          ? { says: 'bank-value.item', ...of, item: index + 1 }
          : { says: 'bank-value.key', ...of },
      tree.positionOf(path),
    );
  }
}
