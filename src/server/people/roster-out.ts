/** A class as a roster: one table, or the files of OneRoster 1.1. */
import type { ClassDetail, Member } from '../../../shared/people.ts';
import { type RosterFrame, type RosterUser, writeCsv, writeRoster } from '../../homework/index.ts';
import type { Words } from '../../words/index.ts';
import { ROSTER_TABLE } from './roster-in.ts';

/** With a mark at its beginning by which spreadsheets see that it is UTF-8. */
export const rosterCsv = ({ members }: ClassDetail): string =>
  `\uFEFF${writeCsv(
    [ROSTER_TABLE, ...members.map(({ id, name, signIn, manner }) => [id, name, signIn ?? '', manner])],
    { forSpreadsheets: true },
  )}`;

const dateOf = (moment: number): string => new Date(moment).toISOString().slice(0, 10);
const YEAR = 365 * 86_400_000;

function frameOf({ createdAt, endedAt }: ClassDetail, words: Words): RosterFrame {
  const { given } = words.server.rosters;
  const endDate = dateOf(endedAt ?? createdAt + YEAR);
  return {
    org: { sourcedId: 'polewise-org', name: 'Polewise' },
    session: {
      sourcedId: `polewise-${dateOf(createdAt)}`,
      title: given.session({ from: dateOf(createdAt) }),
      startDate: dateOf(createdAt),
      endDate,
      schoolYear: endDate.slice(0, 4),
    },
    course: { sourcedId: 'polewise-course', title: given.course },
  };
}

/** One name as the two that the standard wants: what is behind the last space is the family name. */
function userOf({ id, name, signIn, manner }: Member): RosterUser {
  const space = name.lastIndexOf(' ');
  return {
    sourcedId: id,
    status: 'active',
    enabled: true,
    role: manner === 'tutor' ? 'teacher' : 'student',
    username: signIn ?? id,
    givenName: space < 0 ? name : name.slice(0, space),
    familyName: space < 0 ? '-' : name.slice(space + 1),
  };
}

/** By file name. */
export const oneRosterFiles = (detail: ClassDetail, words: Words): Readonly<Record<string, string>> =>
  writeRoster(
    {
      users: detail.members.map(userOf),
      classes: [
        { sourcedId: detail.id, status: 'active', title: detail.title, classCode: detail.intake ?? '' },
      ],
      enrollments: detail.members.map(({ id, manner }) => ({
        sourcedId: `${detail.id}.${id}`,
        status: 'active',
        class: detail.id,
        user: id,
        role: manner === 'tutor' ? 'teacher' : 'student',
      })),
    },
    frameOf(detail, words),
  );
