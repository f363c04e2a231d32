import { Schedule } from '../../../parts/schedule.tsx';
import { SkillTitle } from '../../../parts/written.tsx';
import { words } from '../../../words.ts';
import { ShareCell } from './share-cell.tsx';
import type { LearnerReport } from './types.ts';

/** One paper's marks by skill. */
export function SkillTable({ skills }: { skills: LearnerReport['skills'] }) {
  const w = words('homework').marked;
  return (
    <Schedule
      class="schedule"
      caption={w.bySkill}
      rows={skills}
      keyOf={({ skill }) => skill}
      columns={[
        { title: w.skill, head: true, cell: SkillTitle },
        { title: w.items, minor: true, like: 'number', cell: ({ items }) => items },
        { title: w.marks, like: 'number', cell: ({ earned, outOf }) => w.marksOf({ earned, outOf }) },
        { title: w.share, own: ({ share }) => <ShareCell share={share} /> },
      ]}
    />
  );
}
