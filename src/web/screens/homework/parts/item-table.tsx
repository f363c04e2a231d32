import type { Paper, PaperMark } from '../../../../../shared/homework.ts';
import { earnedIn, shownMarks } from './item-verdict.tsx';

const ANSWERED = { all: 'yes', part: 'in part', none: 'no' } as const;

/** The items of a marked paper with what each earned, and the way to it. */
export function ItemTable({
  paper,
  mark,
  to,
}: {
  paper: Paper;
  mark: PaperMark;
  to: (item: number) => string;
}) {
  return (
    <table class="schedule">
      <caption>Items</caption>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Drawing</th>
          <th scope="col" class="minor">
            Answered
          </th>
          <th scope="col">Right</th>
          <th scope="col">Marks</th>
        </tr>
      </thead>
      <tbody>
        {mark.items.map((item, at) => (
          <tr key={item.circuit}>
            <td class="number">{at + 1}</td>
            <th scope="row">
              <a href={to(at + 1)}>{paper.items[at]?.question.circuit.title ?? `Item ${at + 1}`}</a>
            </th>
            <td class="minor">{ANSWERED[item.answered]}</td>
            <td>
              <span class={item.mark.correct ? 'verdict right' : 'verdict wrong'}>
                {item.mark.parts.filter(({ correct }) => correct).length} of {item.mark.parts.length}
              </span>
            </td>
            <td class="number">
              {shownMarks(earnedIn(item))} of {item.marks}
              {item.overrides.length > 0 && <span class="away"> (marked by the tutor)</span>}
              {item.overrides.length > 0 && <span aria-hidden="true"> *</span>}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
