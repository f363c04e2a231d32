import type { Course } from '../../practice/index.ts';
import type { Store } from '../../store/index.ts';

/** What is practised, by whose store, and how often. */
export interface DrillOptions {
  readonly course: Course;
  readonly store: Store;
  readonly seed: string;
  readonly count: number;
  readonly skill?: string;
  /** Find first where to begin, also when it isn't the first visit. */
  readonly place?: boolean;
}
