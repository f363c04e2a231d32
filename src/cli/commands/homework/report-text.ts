/** A class's report as it is read in a terminal. */
import type { SetReport } from '../../../../shared/homework-views.ts';
import type { CommandWords } from '../../../words/commands.ts';
import type { Io } from '../../io.ts';
import { styleFor, wrapText } from '../../style.ts';

type Said = CommandWords['homeworkReport'];

const percent = (share: number | null, said: Said): string =>
  share === null ? said.none : said.percent(Math.round(share * 100));
const figure = (value: number | null, said: Said): string =>
  value === null ? said.none : said.figure(value);

/** Rows with their columns under one another; numbers to the right, the first column to the left. */
function table(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) =>
    row
      .map((text, column) => (column === 0 ? text.padEnd(widths[0]!) : text.padStart(widths[column]!)))
      .join('  ')
      .trimEnd(),
  );
}

type Concern = SetReport['report']['lookAfter'][number]['concerns'][number];

function concernText(concern: Concern, said: Said): string {
  switch (concern.kind) {
    case 'nothing-handed-in':
      return said.concerns.nothingHandedIn;
    case 'half-left-out':
      return said.concerns.answered({ answered: concern.answered, of: concern.items });
    case 'low-marks':
      return said.concerns.ofTheMarks(percent(concern.share, said));
    case 'firm-idea':
      return said.concerns.idea(concern);
  }
}

export function reportText(
  { set, people, report }: SetReport,
  io: Pick<Io, 'colour' | 'columns' | 'words'>,
): string {
  const { homeworkReport: said } = io.words;
  const style = styleFor(io);
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const wrapped = (text: string): string => wrapText(`  ${text}`, io.columns, '    ');
  const { statistics } = said;
  const { rows, skills, ideas, places, lookAfter } = report;
  return [
    style.strong(set.title),
    said.handedIn(report),
    '',
    style.strong(said.learners),
    ...table([
      ['', said.columns.marks, said.columns.share, ...skills.map(({ skill }) => skill)],
      ...rows.map(({ learner, total, shares }) => [
        names.get(learner) ?? learner,
        total ? said.total(total) : said.none,
        percent(total?.share ?? null, said),
        ...shares.map((share) => percent(share, said)),
      ]),
      [said.all, '', '', ...skills.map(({ share }) => percent(share, said))],
    ]),
    '',
    style.strong(said.ideas),
    ...(ideas.length === 0 ? [`  ${said.noIdeas}`] : []),
    ...ideas.flatMap(({ idea, advice, times, learners }) => [
      wrapped(said.idea({ idea: style.note(idea), learners: learners.length, times })),
      wrapped(advice),
    ]),
    '',
    style.strong(said.places),
    ...table([
      ['', statistics.facility, statistics.discrimination, statistics.upperLower, statistics.leftOut],
      ...places.map(({ place, skill, facility, discrimination, upperLower, leftOut }) => [
        said.place({ place, skill }),
        figure(facility, said),
        figure(discrimination, said),
        figure(upperLower, said),
        String(leftOut),
      ]),
    ]),
    said.alpha(figure(report.alpha, said)),
    '',
    style.strong(said.toLookAfter),
    ...(lookAfter.length === 0 ? [`  ${said.nobody}`] : []),
    ...lookAfter.map(({ learner, concerns }) =>
      wrapped(
        said.lookAfter({
          name: names.get(learner) ?? learner,
          concerns: concerns.map((concern) => concernText(concern, said)),
        }),
      ),
    ),
  ].join('\n');
}
