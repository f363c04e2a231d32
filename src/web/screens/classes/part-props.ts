import type { ClassDetail } from '../../../../shared/people.ts';

/** What each part of a class is given. */
export interface PartProps {
  readonly detail: ClassDetail;
  /** Takes in the class as the server now has it. */
  readonly onDetail: (detail: ClassDetail) => void;
}
