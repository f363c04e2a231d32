import type { Bank } from '../../../../../shared/bank.ts';
import { set, words } from '../../../words.ts';
import type { ClassReport } from '../parts/types.ts';

/** Below this a place tells hardly anything. Common practice, no source. */
const TELLS_LITTLE = 0.1;

/** What each place told: how easy it was, and whether it tells who can do it. */
export function Places({ bank, report }: { bank: Bank; report: ClassReport }) {
  const w = words('sets').report.places;
  const titles = new Map(bank.topics.flatMap(({ skills }) => skills.map(({ id, title }) => [id, title])));
  return (
    <section>
      <table class="schedule places">
        <caption>{w.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{w.place}</th>
            <th scope="col">{w.skill}</th>
            <th scope="col">{w.facility}</th>
            <th scope="col">{w.discrimination}</th>
            <th scope="col" class="minor">
              {w.upperLower}
            </th>
            <th scope="col" class="minor">
              {w.leftOut}
            </th>
          </tr>
        </thead>
        <tbody>
          {report.places.map(({ place, skill, facility, discrimination, upperLower, leftOut }) => {
            const little = discrimination !== null && discrimination < TELLS_LITTLE;
            return (
              <tr key={place}>
                <td class="number">{place}</td>
                <th scope="row">{titles.get(skill) ?? skill}</th>
                <td class="number">{w.figure(facility)}</td>
                <td class={little ? 'number little' : 'number'}>
                  {little
                    ? set(w.tellsLittle(discrimination), { of: (text) => <span class="of">{text}</span> })
                    : w.figure(discrimination)}
                </td>
                <td class="number minor">{w.figure(upperLower)}</td>
                <td class="number minor">{leftOut}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <ul class="quiet notes">
        <li>{w.notes.facility}</li>
        <li>{w.notes.discrimination}</li>
        <li>{w.notes.upperLower}</li>
        <li>{w.notes.alpha(report.alpha)}</li>
      </ul>
    </section>
  );
}
