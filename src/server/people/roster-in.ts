/** Reads a roster of either form into whom it wants in the class: all of it, or every mistake with its line. */
import type { RosterIn } from '../../../shared/api-people.ts';
import { beginsFormula, newName } from '../../../shared/new-names.ts';
import { type Manner, manner, personId, signInName } from '../../../shared/people.ts';
import type { Checked, Problem } from '../../../shared/problem.ts';
import { interchangeProblem, type Roster, readCsv, readRoster, withoutGuards } from '../../homework/index.ts';
import type { WantedMember } from '../../store/index.ts';
import type { InterchangeProblemSaid } from '../../words/index.ts';

/** Columns of the table that is written and read here; only the name has to be there. */
export const ROSTER_TABLE = ['id', 'name', 'sign-in', 'manner'] as const;

/** The name for signing in, where a text can be one. */
const signInOf = (text: string): string | null => signInName.safeParse(text.toLowerCase()).data ?? null;

/** An id that may be one of ours; those of other systems name nobody here. */
const idIn = (text: string): string | null => personId.safeParse(text).data || null;

function fromTable(text: string): Checked<readonly WantedMember[]> {
  const table = readCsv(text);
  if (!table.ok) return table;
  const { columns, rows } = table.value;
  if (!columns.includes('name'))
    return {
      ok: false,
      problems: [
        interchangeProblem({ says: 'roster-missing-column.name', columns: ROSTER_TABLE }, { line: 1 }),
      ],
    };
  const problems: Problem[] = [];
  const wanted = rows.flatMap(({ line, value }): readonly WantedMember[] => {
    const bad = (said: InterchangeProblemSaid): readonly WantedMember[] => {
      problems.push(interchangeProblem(said, { line }));
      return [];
    };
    const given = withoutGuards(value('name'));
    const name = newName.safeParse(given);
    if (!name.success)
      return bad(
        beginsFormula(given, true)
          ? { says: 'roster-bad-value.formula', name: given }
          : { says: 'roster-bad-value.name' },
      );
    const how = manner.safeParse(value('manner') || 'learner');
    if (!how.success) return bad({ says: 'roster-bad-value.manner', given: value('manner') });
    const signIn = value('sign-in');
    if (signIn !== '' && signInOf(signIn) === null)
      return bad({ says: 'roster-bad-value.signIn', given: signIn });
    return [
      {
        id: idIn(value('id')),
        name: name.data,
        signIn: signIn ? signInOf(signIn) : null,
        manner: how.data,
      },
    ];
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: wanted };
}

/** The class that is meant, of those in the files. */
function classIn({ classes }: Roster, wanted: string | undefined): Checked<string> {
  const active = classes.filter(({ status }) => status === 'active');
  const found = wanted === undefined ? active : active.filter(({ sourcedId }) => sourcedId === wanted);
  if (found.length === 1) return { ok: true, value: found[0]!.sourcedId };
  const named = active.slice(0, 10).map(({ sourcedId, title }) => ({ id: sourcedId, title }));
  return {
    ok: false,
    problems: [
      interchangeProblem(
        active.length === 0
          ? { says: 'roster-bad-value.noClass' }
          : { says: 'roster-bad-value.class', classes: named },
        { file: 'classes.csv' },
      ),
    ],
  };
}

/** A family name of `-` stands for none: the standard wants one of everybody. */
const fullName = (given: string, family: string): string =>
  [given, family].filter((name) => name !== '' && name !== '-').join(' ');

/** On which line of the table of users somebody stands; looked up where there is something to say of it. */
function lineOf(files: Readonly<Record<string, string>>, sourcedId: string): Pick<Problem, 'line'> {
  const users = readCsv(files['users.csv'] ?? '');
  const row = users.ok && users.value.rows.find(({ value }) => value('sourcedId') === sourcedId);
  return row ? { line: row.line } : {};
}

const MANNERS: Readonly<Record<string, Manner>> = { student: 'learner', teacher: 'tutor' };

function fromOneRoster(
  files: Readonly<Record<string, string>>,
  wanted: string | undefined,
): Checked<readonly WantedMember[]> {
  const read = readRoster(files);
  if (!read.ok) return read;
  const of = classIn(read.value, wanted);
  if (!of.ok) return of;
  const users = new Map(read.value.users.map((user) => [user.sourcedId, user]));
  const problems: Problem[] = [];
  const people = read.value.enrollments.flatMap((enrollment): readonly WantedMember[] => {
    const user = users.get(enrollment.user);
    const how = MANNERS[enrollment.role];
    if (enrollment.class !== of.value || enrollment.status !== 'active' || !how) return [];
    if (user?.status !== 'active' || !user.enabled) return [];
    const given = fullName(user.givenName, user.familyName);
    const name = newName.safeParse(given);
    if (name.success) {
      const signIn = user.username === user.sourcedId ? null : signInOf(user.username);
      return [{ id: idIn(user.sourcedId), name: name.data, signIn, manner: how }];
    }
    problems.push(
      interchangeProblem(
        {
          says: beginsFormula(given, true) ? 'roster-bad-value.formulaOf' : 'roster-bad-value.nameOf',
          id: user.sourcedId,
        },
        { file: 'users.csv', ...lineOf(files, user.sourcedId) },
      ),
    );
    return [];
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: people };
}

export const wantedIn = (roster: RosterIn): Checked<readonly WantedMember[]> =>
  roster.format === 'csv' ? fromTable(roster.text) : fromOneRoster(roster.files, roster.class);
