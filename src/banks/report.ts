import type { Checked, Problem } from '../../shared/problem.ts';
import type { BankProblemSaid } from '../words/index.ts';
import { BANK_LIMITS } from './limits.ts';
import type { Position } from './position.ts';
import { bankProblem } from './problem-codes.ts';

/** Collects the mistakes of one file. Past the limit it only remembers that there are more. */
export class BankReport {
  readonly file: string;
  private readonly found: Problem[] = [];
  private more = false;

  constructor(file: string) {
    this.file = file;
  }

  add(said: BankProblemSaid, { line, column }: Position): void {
    this.put(bankProblem(said, { line, column }));
  }

  /**
   * Takes over problems of a text that stands inside the file: its line 1 is the file's line `position.line`, and on that
   * line its column 1 is the file's column `position.column`.
   */
  within(problems: readonly Problem[], position: Position): void {
    for (const problem of problems) {
      const line = problem.line ?? 1;
      this.put({
        ...problem,
        line: position.line + line - 1,
        column: (problem.column ?? 1) + (line === 1 ? position.column - 1 : 0),
      });
    }
  }

  get clean(): boolean {
    return this.found.length === 0;
  }

  /** Every mistake, in the order of the file. */
  get problems(): readonly Problem[] {
    const problems = this.found.toSorted(
      (a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0),
    );
    const last = problems.at(-1);
    if (this.more && last)
      problems.push({
        ...last,
        ...bankProblem({ says: 'bank-too-many-problems', most: BANK_LIMITS.problems }),
      });
    return problems;
  }

  /** The value if there was no mistake. */
  conclude<T>(value: T | undefined): Checked<T> {
    if (!this.clean || value === undefined) return { ok: false, problems: this.problems };
    return { ok: true, value };
  }

  private put(problem: Problem): void {
    if (this.found.length >= BANK_LIMITS.problems) this.more = true;
    else this.found.push({ ...problem, file: this.file });
  }
}
