import { useEffect, useState } from 'preact/hooks';
import type { ClassSummary } from '../../../../shared/people.ts';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { me, roleOf } from '../../me.ts';
import { Schedule } from '../../parts/schedule.tsx';
import { words } from '../../words.ts';
import { classAddress } from './classes-route.ts';

function Table({ classes, caption }: { classes: readonly ClassSummary[]; caption: string }) {
  const w = words('classes').list;
  return (
    <Schedule
      class="roll folds"
      caption={caption}
      captionAway
      rows={classes}
      keyOf={({ id }) => id}
      columns={[
        { title: w.class, head: true, cell: ({ id, title }) => <a href={classAddress(id)}>{title}</a> },
        { title: w.intake, beside: true, cell: ({ intake }) => intake ?? w.noIntake },
        {
          title: w.learners,
          titled: 'number',
          like: 'number',
          beside: true,
          cell: ({ learners }) => learners,
        },
        {
          title: w.since,
          beside: true,
          cell: ({ createdAt, endedAt }) =>
            endedAt === null ? w.from(createdAt) : w.fromTo({ from: createdAt, to: endedAt }),
        },
      ]}
    />
  );
}

/** The classes somebody is tutor of; for the administrator all there are. */
export function List() {
  const { list: w, common } = words('classes');
  const [classes, setClasses] = useState<readonly ClassSummary[]>();
  const act = useAct();
  useEffect(() => {
    act.run(async () => setClasses((await call('classes')).classes));
    // Once, when it appears; `act` is another object each time.
  }, []);
  const admin = roleOf(me.value) === 'admin';
  const ended = classes?.filter(({ endedAt }) => endedAt !== null) ?? [];
  const going = classes?.filter(({ endedAt }) => endedAt === null) ?? [];
  return (
    <>
      <h1>{w.classes}</h1>
      <p class="row">
        <a class="button main" href="#/classes/new">
          {w.newClass}
        </a>
        {admin && (
          <a class="button" href="#/classes/people">
            {w.people}
          </a>
        )}
      </p>
      <Failure words={act.failure} />
      {!classes && !act.failure && <p role="status">{common.fetching}</p>}
      {classes && (going.length > 0 ? <Table classes={going} caption={w.classes} /> : <p>{w.none}</p>)}
      {ended.length > 0 && (
        <details>
          <summary>{w.ended(ended.length)}</summary>
          <Table classes={ended} caption={w.endedOnes} />
        </details>
      )}
    </>
  );
}
