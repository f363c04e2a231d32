import type { Paper, ToldPaperMark } from '../../../../../shared/homework.ts';
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
    <table class="schedule">
      <caption>{w.items}</caption>
      <thead>
        <tr>
          <th scope="col">{w.number}</th>
          <th scope="col">{w.drawing}</th>
          <th scope="col" class="minor">
            {w.answered}
          </th>
          <th scope="col">{w.right}</th>
          <th scope="col">{w.marks}</th>
        </tr>
      </thead>
      <tbody>
        {mark.items.map((item, at) => (
          <tr key={item.circuit}>
            <td class="number">{at + 1}</td>
            <th scope="row">
              <a href={to(at + 1)}>{paper.items[at]?.question.circuit.title ?? w.item(at + 1)}</a>
            </th>
            <td class="minor">{w.answeredSo[item.answered]}</td>
            <td>
              <span class={item.mark.correct ? 'verdict right' : 'verdict wrong'}>
                {w.rightOf({
                  right: item.mark.parts.filter(({ correct }) => correct).length,
                  count: item.mark.parts.length,
                })}
              </span>
            </td>
            <td class="number">
              {item.overrides.length === 0
                ? w.marksOf(earnedOf(item))
                : set(w.marksByTutor(earnedOf(item)), {
                    said: (text) => <span class="away">{text}</span>,
                    seen: (text) => <span aria-hidden="true">{text}</span>,
                  })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
