import type { Bank } from '../../../../../shared/bank.ts';
import type { ClassReport } from '../parts/types.ts';

/** To two places; what rounds to nothing has no sign. */
const figure = (value: number | null): string =>
  value === null ? '–' : (Math.round(100 * value) / 100 || 0).toFixed(2);

/** Below this a place tells hardly anything. Common practice, no source. */
const TELLS_LITTLE = 0.1;

/** What each place told: how easy it was, and whether it tells who can do it. */
export function Places({ bank, report }: { bank: Bank; report: ClassReport }) {
  const titles = new Map(bank.topics.flatMap(({ skills }) => skills.map(({ id, title }) => [id, title])));
  return (
    <section>
      <table class="schedule places">
        <caption>What each place told</caption>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Skill</th>
            <th scope="col">Facility</th>
            <th scope="col">Discrimination</th>
            <th scope="col" class="minor">
              Best less weakest
            </th>
            <th scope="col" class="minor">
              Left out
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
                <td class="number">{figure(facility)}</td>
                <td class={little ? 'number little' : 'number'}>
                  {figure(discrimination)}
                  {little && (
                    <>
                      {' '}
                      <span class="of">tells little</span>
                    </>
                  )}
                </td>
                <td class="number minor">{figure(upperLower)}</td>
                <td class="number minor">{leftOut}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
      <ul class="quiet notes">
        <li>
          Facility: the mean mark as a share of the full one. Near 1 everybody can do it, near 0 nobody.
        </li>
        <li>
          Discrimination: how marks here go with marks on the rest of the paper. Near or below 0 the place
          tells nothing of who can do it.
        </li>
        <li>Best less weakest: the mean share in the best 27 % less that in the weakest 27 %.</li>
        <li>
          Cronbach’s alpha over the places is {figure(report.alpha)}: how far they measure one thing. Below
          some 30 learners none of these figures says much.
        </li>
      </ul>
    </section>
  );
}
