/** Reads users, classes and enrolments out of OneRoster 1.1 CSV files: all of it, or every mistake with file and line. */
import type { Checked, Problem } from '../../../../shared/problem.ts';
import type { InterchangeProblemSaid } from '../../../words/index.ts';
import { interchangeProblem } from '../../problem-codes.ts';
import { type CsvTable, readCsv } from '../csv.ts';
import { ENROLLMENT_ROLES, USER_ROLES } from './columns.ts';
import type { Roster, RosterClass, RosterEnrollment, RosterStatus, RosterUser } from './types.ts';

type TableRow = CsvTable['rows'][number];

/** One file being read; problems are gathered with the file's name and the line. */
class RosterReading {
  readonly problems: Problem[] = [];
  private readonly files: Readonly<Record<string, string>>;

  constructor(files: Readonly<Record<string, string>>) {
    this.files = files;
  }

  private fault(said: InterchangeProblemSaid, file: string, line?: number): void {
    this.problems.push(interchangeProblem(said, { file, line }));
  }

  /** Reads a file row by row; a row that `read` finds wanting is left out after it has been reported. */
  table<T extends { readonly sourcedId: string }>(
    file: string,
    required: readonly string[],
    read: (row: TableRow) => T | undefined,
  ): readonly T[] {
    const text = this.files[file];
    if (text === undefined) {
      this.fault({ says: 'roster-missing-file', file }, file);
      return [];
    }
    const parsed = readCsv(text);
    if (!parsed.ok) {
      this.problems.push(...parsed.problems.map((problem) => ({ ...problem, file })));
      return [];
    }
    const { columns, rows } = parsed.value;
    const missing = required.filter((column) => !columns.includes(column));
    for (const column of missing)
      this.fault({ says: 'roster-missing-column', column, columns: required }, file, 1);
    if (missing.length > 0) return [];
    const seen = new Set<string>();
    return rows.flatMap((row) => {
      const empty = required.filter((column) => row.value(column) === '');
      for (const column of empty) this.fault({ says: 'roster-missing-value', column }, file, row.line);
      if (empty.length > 0) return [];
      const made = read(row);
      if (!made) return [];
      if (seen.has(made.sourcedId)) {
        this.fault({ says: 'roster-twice', id: made.sourcedId }, file, row.line);
        return [];
      }
      seen.add(made.sourcedId);
      return [made];
    });
  }

  oneOf<const V extends string>(
    file: string,
    row: TableRow,
    column: string,
    values: readonly V[],
  ): V | undefined {
    const text = row.value(column);
    const found = values.find((value) => value.toLowerCase() === text.toLowerCase());
    if (found === undefined)
      this.fault({ says: 'roster-bad-value', column, value: text, values }, file, row.line);
    return found;
  }

  /** Empty in a bulk exchange: everything there is active. */
  status(file: string, row: TableRow): RosterStatus | undefined {
    return row.value('status') === ''
      ? 'active'
      : this.oneOf(file, row, 'status', ['active', 'tobedeleted'] as const);
  }

  /** Whether the manifest says that a file has only what has changed; what it refers to may then be elsewhere. */
  isDelta(file: string): boolean {
    const manifest = readCsv(this.files['manifest.csv'] ?? '');
    return (
      manifest.ok &&
      manifest.value.rows.some(
        (row) => row.value('propertyName') === `file.${file}` && row.value('value') === 'delta',
      )
    );
  }

  refers(file: string, line: number, column: string, to: string, known: ReadonlySet<string>): void {
    if (known.has(to)) return;
    this.fault({ says: 'roster-unknown-reference', column, to }, file, line);
  }
}

/**
 * Reads a roster from files by name. Only the columns that are used need be there; columns of other versions and of
 * national profiles are passed over.
 */
export function readRoster(files: Readonly<Record<string, string>>): Checked<Roster> {
  const reading = new RosterReading(files);
  const users = reading.table(
    'users.csv',
    ['sourcedId', 'enabledUser', 'role', 'username', 'givenName', 'familyName'],
    (row): RosterUser | undefined => {
      const status = reading.status('users.csv', row);
      const enabled = reading.oneOf('users.csv', row, 'enabledUser', ['true', 'false'] as const);
      const role = reading.oneOf('users.csv', row, 'role', USER_ROLES);
      if (!status || !enabled || !role) return undefined;
      const [sourcedId, username] = [row.value('sourcedId'), row.value('username')];
      const [givenName, familyName] = [row.value('givenName'), row.value('familyName')];
      return { sourcedId, status, enabled: enabled === 'true', role, username, givenName, familyName };
    },
  );
  const classes = reading.table('classes.csv', ['sourcedId', 'title'], (row): RosterClass | undefined => {
    const status = reading.status('classes.csv', row);
    const [sourcedId, title] = [row.value('sourcedId'), row.value('title')];
    return status && { sourcedId, status, title, classCode: row.value('classCode') };
  });
  const lines = new Map<string, number>();
  const enrollments = reading.table(
    'enrollments.csv',
    ['sourcedId', 'classSourcedId', 'userSourcedId', 'role'],
    (row): RosterEnrollment | undefined => {
      const status = reading.status('enrollments.csv', row);
      const role = reading.oneOf('enrollments.csv', row, 'role', ENROLLMENT_ROLES);
      if (!status || !role) return undefined;
      const sourcedId = row.value('sourcedId');
      lines.set(sourcedId, row.line);
      return {
        sourcedId,
        status,
        class: row.value('classSourcedId'),
        user: row.value('userSourcedId'),
        role,
      };
    },
  );
  // References are looked at only where everything that could be referred to was read.
  if (reading.problems.length === 0 && !reading.isDelta('enrollments')) {
    const known = {
      users: new Set(users.map(({ sourcedId }) => sourcedId)),
      classes: new Set(classes.map(({ sourcedId }) => sourcedId)),
    };
    for (const { sourcedId, class: of, user } of enrollments) {
      const line = lines.get(sourcedId) ?? 1;
      reading.refers('enrollments.csv', line, 'classSourcedId', of, known.classes);
      reading.refers('enrollments.csv', line, 'userSourcedId', user, known.users);
    }
  }
  return reading.problems.length > 0
    ? { ok: false, problems: reading.problems }
    : { ok: true, value: { users, classes, enrollments } };
}
