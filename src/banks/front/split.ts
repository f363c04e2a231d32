import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';

interface Split {
  readonly front: Lines;
  readonly body: Lines;
}

const isRule = (line: string | undefined): boolean => line?.trimEnd() === '---';

/** Parts a file at the two `---` lines; undefined (and reported) when they aren't there. */
export function splitFrontMatter(lines: readonly string[], report: BankReport): Split | undefined {
  if (!isRule(lines[0])) {
    report.add({ says: 'bank-no-front-matter' }, { line: 1, column: 1 });
    return undefined;
  }
  const end = lines.findIndex((line, index) => index > 0 && isRule(line));
  if (end < 0) {
    report.add({ says: 'bank-no-front-matter.end' }, { line: 1, column: 1 });
    return undefined;
  }
  return {
    front: { first: 2, lines: lines.slice(1, end) },
    body: { first: end + 2, lines: lines.slice(end + 1) },
  };
}
