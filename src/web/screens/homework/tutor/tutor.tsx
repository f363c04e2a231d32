import type { ScreenProps } from '../../../parts/loaded.tsx';
import { routeOf } from '../homework-route.ts';
import { Competence } from './competence.tsx';
import { MarkedPaperScreen } from './marked-paper.tsx';
import { Report } from './report.tsx';
import { Sample } from './sample.tsx';
import { SetForm } from './set-form.tsx';
import { SetScreen } from './set-screen.tsx';
import { Sets } from './sets.tsx';
import { Term } from './term.tsx';
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
    case 'report':
      return <Report key={detail} ground={ground} set={where.set} />;
    case 'typed':
      return <TypedMarks key={detail} set={where.set} />;
    case 'marked':
      return <MarkedPaperScreen ground={ground} set={where.set} paper={where.paper} item={where.item} />;
    case 'term':
      return <Term key={detail} class={where.class} />;
    case 'competence':
      return <Competence key={detail} class={where.class} />;
    default:
      return null;
  }
}
