import type { Course } from '../../practice/index.ts';
import type { Store } from '../../store/index.ts';

/** What homework is done with, by the server and by the commands alike. */
export interface Desk {
  readonly store: Store;
  readonly course: Course;
  /** Milliseconds since 1970; alone decides what is open. */
  now(): number;
}
