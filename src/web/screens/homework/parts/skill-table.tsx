import { words } from '../../../words.ts';
import { ShareCell } from './share-cell.tsx';
import type { LearnerReport } from './types.ts';

/** One paper's marks by skill. */
export function SkillTable({ skills }: { skills: LearnerReport['skills'] }) {
  const w = words('homework').marked;
  return (
    <table class="schedule">
      <caption>{w.bySkill}</caption>
      <thead>
        <tr>
          <th scope="col">{w.skill}</th>
          <th scope="col" class="minor">
            {w.items}
          </th>
          <th scope="col">{w.marks}</th>
          <th scope="col">{w.share}</th>
        </tr>
      </thead>
      <tbody>
        {skills.map(({ skill, title, items, earned, outOf, share }) => (
          <tr key={skill}>
            <th scope="row">{title}</th>
            <td class="number minor">{items}</td>
            <td class="number">{w.marksOf({ earned, outOf })}</td>
            <ShareCell share={share} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
