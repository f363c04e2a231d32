/** A roster as OneRoster 1.1 CSV files: a whole (bulk) exchange, every column in its order, and the manifest. */
import { writeCsv } from '../csv.ts';
import { MANIFEST_FILES, ROSTER_COLUMNS, type RosterFile } from './columns.ts';
import type { Roster, RosterFrame } from './types.ts';

type Row<F extends RosterFile> = Partial<Record<(typeof ROSTER_COLUMNS)[F][number], string>>;

/** In a bulk exchange `status` and `dateLastModified` stay empty, as the standard wants it. */
const table = <F extends RosterFile>(file: F, rows: readonly Row<F>[]): string => {
  const columns = ROSTER_COLUMNS[file] as readonly (keyof Row<F>)[];
  return writeCsv([
    columns as readonly string[],
    ...rows.map((row) => columns.map((column) => row[column] ?? '')),
  ]);
};

function manifest(present: ReadonlySet<string>): string {
  return writeCsv([
    ['propertyName', 'value'],
    ['manifest.version', '1.0'],
    ['oneroster.version', '1.1'],
    ...MANIFEST_FILES.map((file) => [`file.${file}`, present.has(file) ? 'bulk' : 'absent']),
    ['source.systemName', 'Polewise'],
    ['source.systemCode', 'polewise'],
  ]);
}

/** By file name. Whatever is marked `tobedeleted` is left out: a bulk exchange has only what there is. */
export function writeRoster(roster: Roster, frame: RosterFrame): Readonly<Record<string, string>> {
  const { org, session, course } = frame;
  const active = <T extends { readonly status: string }>(list: readonly T[]): readonly T[] =>
    list.filter(({ status }) => status === 'active');
  const tables: Readonly<Record<RosterFile, string>> = {
    academicSessions: table('academicSessions', [{ ...session, type: 'schoolYear' }]),
    classes: table(
      'classes',
      active(roster.classes).map(({ sourcedId, title, classCode }) => ({
        sourcedId,
        title,
        classCode,
        classType: 'scheduled',
        courseSourcedId: course.sourcedId,
        schoolSourcedId: org.sourcedId,
        termSourcedIds: session.sourcedId,
      })),
    ),
    courses: table('courses', [
      { ...course, orgSourcedId: org.sourcedId, schoolYearSourcedId: session.sourcedId },
    ]),
    enrollments: table(
      'enrollments',
      active(roster.enrollments).map(({ sourcedId, class: of, user, role }) => ({
        sourcedId,
        classSourcedId: of,
        schoolSourcedId: org.sourcedId,
        userSourcedId: user,
        role,
      })),
    ),
    orgs: table('orgs', [{ ...org, type: 'school' }]),
    users: table(
      'users',
      active(roster.users).map(({ sourcedId, enabled, role, username, givenName, familyName }) => ({
        sourcedId,
        enabledUser: String(enabled),
        orgSourcedIds: org.sourcedId,
        role,
        username,
        givenName,
        familyName,
      })),
    ),
  };
  return {
    'manifest.csv': manifest(new Set(Object.keys(tables))),
    ...Object.fromEntries(Object.entries(tables).map(([file, text]) => [`${file}.csv`, text])),
  };
}
