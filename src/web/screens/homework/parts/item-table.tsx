import type { Paper, ToldPaperMark } from '../../../../../shared/homework.ts';
import { Schedule } from '../../../parts/schedule.tsx';
import { set, words } from '../../../words.ts';
import { earnedOf } from './item-verdict.tsx';

/** The items of a marked paper with what each earned, and the way to it. */
export function ItemTable({
  paper,
  mark,
  to,
}: {
  paper: Paper;
  mark: ToldPaperMark;
  to: (item: number) => string;
}) {
  const w = words('homework').marked;
  return (
    <Schedule
      class="schedule"
      caption={w.items}
      rows={mark.items}
      keyOf={({ circuit }) => circuit}
      columns={[
        { title: w.number, like: 'number', cell: (_, at) => at + 1 },
        {
          title: w.drawing,
          head: true,
          cell: (_, at) => (
            <a href={to(at + 1)}>{paper.items[at]?.question.circuit.title ?? w.item(at + 1)}</a>
          ),
        },
        { title: w.answered, minor: true, cell: ({ answered }) => w.answeredSo[answered] },
        {
          title: w.right,
          cell: ({ mark: { correct, parts } }) => (
            <span class={correct ? 'verdict right' : 'verdict wrong'}>
              {w.rightOf({ right: parts.filter((part) => part.correct).length, count: parts.length })}
            </span>
          ),
        },
        {
          title: w.marks,
          like: 'number',
          cell: (item) =>
            item.overrides.length === 0
              ? w.marksOf(earnedOf(item))
              : set(w.marksByTutor(earnedOf(item)), {
                  said: (text) => <span class="away">{text}</span>,
                  seen: (text) => <span aria-hidden="true">{text}</span>,
                }),
        },
      ]}
    />
  );
}
