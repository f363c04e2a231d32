import type { Checked, Problem } from '../../../shared/problem.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { LIMITS } from '../limits.ts';
import type { Place } from '../places.ts';
import { circuitProblem } from '../problem-codes.ts';

/** Collects the mistakes of one reading. Past the limit it only remembers that there are more. */
export class Report {
  private readonly problems: Problem[] = [];
  private more = false;

  add(said: CircuitProblemSaid, { line, column }: Place): void {
    if (this.full) this.more = true;
    else this.problems.push(circuitProblem(said, { line, column }));
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
      const { line, column } = last;
      problems.push(circuitProblem({ says: 'too-many-problems', most: LIMITS.problems }, { line, column }));
    }
    return { ok: false, problems };
  }
}
