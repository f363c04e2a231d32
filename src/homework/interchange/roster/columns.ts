/** The files and columns of OneRoster 1.1 CSV that are written here, in the order of the specification. */

export const ROSTER_COLUMNS = {
  academicSessions: [
    'sourcedId',
    'status',
    'dateLastModified',
    'title',
    'type',
    'startDate',
    'endDate',
    'parentSourcedId',
    'schoolYear',
  ],
  classes: [
    'sourcedId',
    'status',
    'dateLastModified',
    'title',
    'grades',
    'courseSourcedId',
    'classCode',
    'classType',
    'location',
    'schoolSourcedId',
    'termSourcedIds',
    'subjects',
    'subjectCodes',
    'periods',
  ],
  courses: [
    'sourcedId',
    'status',
    'dateLastModified',
    'schoolYearSourcedId',
    'title',
    'courseCode',
    'grades',
    'orgSourcedId',
    'subjects',
    'subjectCodes',
  ],
  enrollments: [
    'sourcedId',
    'status',
    'dateLastModified',
    'classSourcedId',
    'schoolSourcedId',
    'userSourcedId',
    'role',
    'primary',
    'beginDate',
    'endDate',
  ],
  orgs: ['sourcedId', 'status', 'dateLastModified', 'name', 'type', 'identifier', 'parentSourcedId'],
  users: [
    'sourcedId',
    'status',
    'dateLastModified',
    'enabledUser',
    'orgSourcedIds',
    'role',
    'username',
    'userIds',
    'givenName',
    'familyName',
    'middleName',
    'identifier',
    'email',
    'sms',
    'phone',
    'agentSourcedIds',
    'grades',
    'password',
  ],
} as const;

export type RosterFile = keyof typeof ROSTER_COLUMNS;

/** Every file that a manifest has to name, in its order. */
export const MANIFEST_FILES = [
  'academicSessions',
  'categories',
  'classes',
  'classResources',
  'courses',
  'courseResources',
  'demographics',
  'enrollments',
  'lineItems',
  'orgs',
  'resources',
  'results',
  'users',
] as const;

/** Roles of users and of enrolments, which are fewer. */
export const USER_ROLES = [
  'administrator',
  'aide',
  'guardian',
  'parent',
  'proctor',
  'relative',
  'student',
  'teacher',
] as const;
export const ENROLLMENT_ROLES = ['administrator', 'proctor', 'student', 'teacher'] as const;

export type UserRole = (typeof USER_ROLES)[number];
export type EnrollmentRole = (typeof ENROLLMENT_ROLES)[number];
