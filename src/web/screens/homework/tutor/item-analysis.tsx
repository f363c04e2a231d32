import type { Bank } from '../../../../../shared/bank.ts';
import { Schedule } from '../../../parts/schedule.tsx';
import { SkillTitle } from '../../../parts/written.tsx';
import { set, words } from '../../../words.ts';
import type { ClassReport } from '../parts/types.ts';

/** Below this a place tells hardly anything. Common practice, no source. */
const TELLS_LITTLE = 0.1;

function Discrimination({ of }: { of: number | null }) {
  const w = words('sets').report.places;
  return of !== null && of < TELLS_LITTLE ? (
    <td class="number little">{set(w.tellsLittle(of), { of: (text) => <span class="of">{text}</span> })}</td>
  ) : (
    <td class="number">{w.figure(of)}</td>
  );
}

/** What each place told: how easy it was, and whether it tells who can do it. */
export function ItemAnalysis({ bank, report }: { bank: Bank; report: ClassReport }) {
  const w = words('sets').report.places;
  const titles = new Map(bank.topics.flatMap(({ skills }) => skills.map(({ id, title }) => [id, title])));
  return (
    <section>
      <Schedule
        class="schedule places"
        caption={w.caption}
        rows={report.places}
        keyOf={({ place }) => place}
        columns={[
          { title: w.place, like: 'number', cell: ({ place }) => place },
          {
            title: w.skill,
            head: true,
            cell: ({ skill }) => <SkillTitle skill={skill} title={titles.get(skill) ?? skill} />,
          },
          { title: w.facility, like: 'number', cell: ({ facility }) => w.figure(facility) },
          { title: w.discrimination, own: (place) => <Discrimination of={place.discrimination} /> },
          {
            title: w.upperLower,
            minor: true,
            like: 'number',
            cell: ({ upperLower }) => w.figure(upperLower),
          },
          { title: w.leftOut, minor: true, like: 'number', cell: ({ leftOut }) => leftOut },
        ]}
      />
      <ul class="quiet notes">
        <li>{w.notes.facility}</li>
        <li>{w.notes.discrimination}</li>
        <li>{w.notes.upperLower}</li>
        <li>{w.notes.alpha(report.alpha)}</li>
      </ul>
    </section>
  );
}
