import type { ScreenProps } from '../../../parts/loaded.tsx';
import { routeOf } from '../homework-route.ts';
import { MarkedPaperScreen } from './marked-paper.tsx';
import { REPORTS } from './reports.tsx';
import { Sample } from './sample.tsx';
import { SetForm } from './set-form.tsx';
import { SetScreen } from './set-screen.tsx';
import { Sets } from './sets.tsx';
import { TypedMarks } from './typed-marks.tsx';

/** What tutors see of homework, by where they are. */
export function TutorHomework({ ground, detail }: ScreenProps) {
  const where = routeOf(detail);
  switch (where.at) {
    case 'sets':
      return <Sets wanted={where.class} />;
    case 'new':
      return <SetForm key={detail} bank={ground.bank} of={{ class: where.class }} />;
    case 'change':
      return <SetForm key={detail} bank={ground.bank} of={{ set: where.set }} />;
    case 'set':
      return <SetScreen key={detail} bank={ground.bank} set={where.set} />;
    case 'sample':
      return <Sample ground={ground} set={where.set} number={where.number} />;
    case 'typed':
      return <TypedMarks key={detail} set={where.set} />;
    case 'marked':
      return <MarkedPaperScreen ground={ground} set={where.set} paper={where.paper} item={where.item} />;
    case 'report':
      return Object.hasOwn(REPORTS, where.report) ? (
        REPORTS[where.report]!.screen(ground, where.of)
      ) : (
        <Sets wanted={null} />
      );
    default:
      return null;
  }
}
