/** A class's report as it is read in a terminal. */
import type { SetReport } from '../../../../shared/homework-views.ts';
import { counted } from '../../counted.ts';
import type { Io } from '../../io.ts';
import { styleFor, wrapText } from '../../style.ts';

const percent = (share: number | null): string => (share === null ? '-' : `${Math.round(share * 100)} %`);
const figure = (value: number | null): string => (value === null ? '-' : value.toFixed(2));

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

function concernText(concern: Concern): string {
  switch (concern.kind) {
    case 'nothing-handed-in':
      return 'nothing handed in';
    case 'half-left-out':
      return `${concern.answered} of ${concern.items} answered`;
    case 'low-marks':
      return `${percent(concern.share)} of the marks`;
    case 'firm-idea':
      return `${concern.times} times: ${concern.idea}`;
  }
}

export function reportText({ set, people, report }: SetReport, io: Pick<Io, 'colour' | 'columns'>): string {
  const style = styleFor(io);
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const wrapped = (text: string): string => wrapText(`  ${text}`, io.columns, '    ');
  const { rows, skills, ideas, places, lookAfter } = report;
  return [
    style.strong(set.title),
    `${report.handedIn} of ${counted(report.learners, 'learner')} handed in.`,
    '',
    style.strong('Learners'),
    ...table([
      ['', 'marks', 'share', ...skills.map(({ skill }) => skill)],
      ...rows.map(({ learner, total, shares }) => [
        names.get(learner) ?? learner,
        total ? `${total.earned} of ${total.outOf}` : '-',
        percent(total?.share ?? null),
        ...shares.map(percent),
      ]),
      ['All', '', '', ...skills.map(({ share }) => percent(share))],
    ]),
    '',
    style.strong('Wrong ideas, the commonest first'),
    ...(ideas.length === 0 ? ['  None showed.'] : []),
    ...ideas.flatMap(({ idea, advice, times, learners }) => [
      wrapped(`${style.note(idea)} ${counted(learners.length, 'learner')}, ${counted(times, 'answer')}.`),
      wrapped(advice),
    ]),
    '',
    style.strong('Places'),
    ...table([
      ['', 'facility', 'discrimination', 'upper-lower', 'left out'],
      ...places.map(({ place, skill, facility, discrimination, upperLower, leftOut }) => [
        `${place} ${skill}`,
        figure(facility),
        figure(discrimination),
        figure(upperLower),
        String(leftOut),
      ]),
    ]),
    `Cronbach's alpha ${figure(report.alpha)}. With fewer than some 30 learners these figures say little.`,
    '',
    style.strong('To look after'),
    ...(lookAfter.length === 0 ? ['  Nobody.'] : []),
    ...lookAfter.map(({ learner, concerns }) =>
      wrapped(`${names.get(learner) ?? learner}: ${concerns.map(concernText).join('; ')}`),
    ),
  ].join('\n');
}
