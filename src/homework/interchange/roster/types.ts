import type { EnrollmentRole, UserRole } from './columns.ts';

/** `tobedeleted`: a delta says that it is gone. */
export type RosterStatus = 'active' | 'tobedeleted';

/** No more of a person than is used here: what a file has beyond it (addresses, passwords) is never taken over. */
export interface RosterUser {
  readonly sourcedId: string;
  readonly status: RosterStatus;
  readonly enabled: boolean;
  readonly role: UserRole;
  readonly username: string;
  readonly givenName: string;
  readonly familyName: string;
}

export interface RosterClass {
  readonly sourcedId: string;
  readonly status: RosterStatus;
  readonly title: string;
  readonly classCode: string;
}

export interface RosterEnrollment {
  readonly sourcedId: string;
  readonly status: RosterStatus;
  readonly class: string;
  readonly user: string;
  readonly role: EnrollmentRole;
}

export interface Roster {
  readonly users: readonly RosterUser[];
  readonly classes: readonly RosterClass[];
  readonly enrollments: readonly RosterEnrollment[];
}

/** What the standard wants around a class: whose it is, and when. */
export interface RosterFrame {
  readonly org: { readonly sourcedId: string; readonly name: string };
  readonly session: {
    readonly sourcedId: string;
    readonly title: string;
    /** ISO dates, `2026-09-01`. */
    readonly startDate: string;
    readonly endDate: string;
    /** The year in which it ends. */
    readonly schoolYear: string;
  };
  /** What the classes are courses of. */
  readonly course: { readonly sourcedId: string; readonly title: string };
}
