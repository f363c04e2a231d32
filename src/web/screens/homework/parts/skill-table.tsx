import { shownMarks } from './item-verdict.tsx';
import { ShareCell } from './share-cell.tsx';
import type { LearnerReport } from './types.ts';

/** One paper's marks by skill. */
export function SkillTable({ skills }: { skills: LearnerReport['skills'] }) {
  return (
    <table class="schedule">
      <caption>By skill</caption>
      <thead>
        <tr>
          <th scope="col">Skill</th>
          <th scope="col" class="minor">
            Items
          </th>
          <th scope="col">Marks</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {skills.map(({ skill, title, items, earned, outOf, share }) => (
          <tr key={skill}>
            <th scope="row">{title}</th>
            <td class="number minor">{items}</td>
            <td class="number">
              {shownMarks(earned)} of {outOf}
            </td>
            <ShareCell share={share} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}
