import '../../styles/homework.css';
import '../../styles/reports.css';
import { useEffect, useState } from 'preact/hooks';
import { wordsOf } from '../../api.ts';
import type { Outbox } from '../../local/homework/outbox.ts';
import { outboxOf } from '../../local/homework/own-outbox.ts';
import { learnerOf, me, roleOf } from '../../me.ts';
import { asLongAsWanted } from '../../parts/as-long-as-wanted.ts';
import { Loaded, type ScreenProps } from '../../parts/loaded.tsx';
import type { Ground } from '../../start.ts';
import { spoken, words } from '../../words.ts';
import { type HomeworkRoute, routeOf } from './homework-route.ts';
import { MyHomework } from './learner/my-homework.tsx';
import { PaperScreen } from './learner/paper-screen.tsx';
import { Review } from './learner/review.tsx';

/** What tutors see is fetched when one of them comes. */
const forTutors = spoken(['sets'], () =>
  import('./tutor/tutor.tsx').then(({ TutorHomework }) => TutorHomework),
);

type LearnersPlace = Extract<HomeworkRoute, { at: 'mine' | 'paper' | 'review' }>;

function LearnerHomework({ ground, where }: { ground: Ground; where: LearnersPlace }) {
  const person = learnerOf(me.value);
  const [outbox, setOutbox] = useState<Outbox>();
  const [failure, setFailure] = useState('');
  useEffect(
    () => asLongAsWanted(outboxOf(person), setOutbox, (error) => setFailure(wordsOf(error))),
    [person],
  );
  if (failure) return <p role="alert">{failure}</p>;
  if (outbox?.person !== person) return <p role="status">{words('homework').common.fetching}</p>;
  switch (where.at) {
    case 'mine':
      return <MyHomework outbox={outbox} />;
    case 'paper':
      return <PaperScreen ground={ground} outbox={outbox} paper={where.paper} item={where.item} />;
    case 'review':
      return <Review ground={ground} paper={where.paper} item={where.item} />;
  }
}

/** Homework: a learner's own, and for tutors their classes' sets and reports. */
export function Homework({ ground, detail }: ScreenProps) {
  const where = routeOf(detail);
  if (where.at === 'mine' || where.at === 'paper' || where.at === 'review')
    return <LearnerHomework ground={ground} where={where} />;
  if (roleOf(me.value) === 'learner') return <LearnerHomework ground={ground} where={{ at: 'mine' }} />;
  return <Loaded load={forTutors} ground={ground} detail={detail} />;
}
