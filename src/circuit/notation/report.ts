import type { Checked, Problem } from '../../../shared/problem.ts';
import { LIMITS } from '../limits.ts';
import type { CircuitCode } from '../problem-codes.ts';

/** Collects the mistakes of one reading. Past the limit it only remembers that there are more. */
export class Report {
  private readonly problems: Problem[] = [];
  private more = false;

  add(problem: Problem & { readonly code: CircuitCode }): void {
    if (this.full) this.more = true;
    else this.problems.push(problem);
  }

  /** Says that not all of the input was looked at. */
  leaveOff(): void {
    this.more = true;
  }

  get full(): boolean {
    return this.problems.length >= LIMITS.problems;
  }

  get clean(): boolean {
    return this.problems.length === 0;
  }

  /** The value if there was no mistake; else every mistake, in the order of the text. */
  conclude<T>(value: () => T): Checked<T> {
    if (this.clean) return { ok: true, value: value() };
    const problems = this.problems.toSorted(
      (a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0),
    );
    const last = problems.at(-1);
    if (this.more && last) {
      problems.push({
        ...last,
        code: 'too-many-problems',
        message: `There are more than ${LIMITS.problems} mistakes; the others are not listed.`,
        hint: 'Correct these first and read the circuit again.',
      });
    }
    return { ok: false, problems };
  }
}
