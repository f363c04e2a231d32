import { useEffect, useState } from 'preact/hooks';
import type { ClassSummary } from '../../../../shared/people.ts';
import { call } from '../../api.ts';
import { me, roleOf } from '../../me.ts';
import { useAct } from '../../parts/act.ts';
import { dayOf } from '../../parts/moment.ts';
import { Failure } from '../enter/sheet.tsx';
import { classAddress } from './at.ts';

function Table({ classes, caption }: { classes: readonly ClassSummary[]; caption: string }) {
  return (
    <table class="roll folds">
      <caption class="away">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Class</th>
          <th scope="col">Intake</th>
          <th scope="col" class="number">
            Learners
          </th>
          <th scope="col">Since</th>
        </tr>
      </thead>
      <tbody>
        {classes.map(({ id, title, intake, learners, createdAt, endedAt }) => (
          <tr key={id}>
            <th scope="row">
              <a href={classAddress(id)}>{title}</a>
            </th>
            <td data-of="Intake">{intake ?? '–'}</td>
            <td class="number" data-of="Learners">
              {learners}
            </td>
            <td data-of="Since">
              {dayOf(createdAt)}
              {endedAt !== null && ` to ${dayOf(endedAt)}`}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The classes somebody is tutor of; for the administrator all there are. */
export function List() {
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
      <h1>Classes</h1>
      <p class="row">
        <a class="button main" href="#/classes/new">
          New class
        </a>
        {admin && (
          <a class="button" href="#/classes/people">
            People
          </a>
        )}
      </p>
      <Failure words={act.failure} />
      {!classes && !act.failure && <p role="status">Fetching…</p>}
      {classes &&
        (going.length > 0 ? (
          <Table classes={going} caption="Classes" />
        ) : (
          <p>
            No class yet. A new class has a joining code: print slips with it, and learners join by
            themselves.
          </p>
        ))}
      {ended.length > 0 && (
        <details>
          <summary>{ended.length === 1 ? '1 class' : `${ended.length} classes`} ended</summary>
          <Table classes={ended} caption="Classes that have ended" />
        </details>
      )}
    </>
  );
}
