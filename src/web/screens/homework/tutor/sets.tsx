import type { SetRow } from '../../../../../shared/homework-views.ts';
import type { ClassSummary } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { me } from '../../../me.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { Schedule } from '../../../parts/schedule.tsx';
import { set as elements, words } from '../../../words.ts';
import { addressOf, goTo } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { reportsOn } from './reports.tsx';
import { stateText } from './words.ts';

function SetSchedule({ sets }: { sets: readonly SetRow[] }) {
  const w = words('sets').list;
  return (
    <Schedule
      class="schedule"
      caption={w.caption}
      rows={sets}
      keyOf={({ id }) => id}
      columns={[
        {
          title: w.set,
          head: true,
          cell: ({ id, title }) => <a href={addressOf({ at: 'set', set: id })}>{title}</a>,
        },
        { title: w.stands, cell: (set) => stateText(set.state, set) },
        { title: w.items, minor: true, like: 'number', cell: ({ items }) => items },
        { title: w.marks, minor: true, like: 'number', cell: ({ outOf }) => outOf },
        {
          title: w.handedIn,
          like: 'number',
          cell: (set) => (set.issuedAt === null ? w.notIssued : w.handedInOf(set)),
        },
      ]}
    />
  );
}

function OfClass({ chosen, classes }: { chosen: ClassSummary; classes: readonly ClassSummary[] }) {
  const w = words('sets').list;
  const { fetched, again } = useFetched(chosen.id, () =>
    call('classHomework', { params: { class: chosen.id } }),
  );
  return (
    <>
      <Head title={words('homework').common.homework} cells={[chosen.title, w.learners(chosen.learners)]} />
      {classes.length > 1 && (
        <label class="field">
          {w.class}
          <select
            value={chosen.id}
            onChange={({ currentTarget }) => goTo({ at: 'sets', class: currentTarget.value })}
          >
            {classes.map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
      <p class="row">
        <a class="button main" href={addressOf({ at: 'new', class: chosen.id })}>
          {w.newSet}
        </a>
        {reportsOn('class').map(({ name, title }) => (
          <a key={name} href={addressOf({ at: 'report', report: name, of: chosen.id })}>
            {title()}
          </a>
        ))}
      </p>
      <Show of={fetched} again={again}>
        {({ sets }) => (sets.length === 0 ? <p>{w.none}</p> : <SetSchedule sets={sets} />)}
      </Show>
    </>
  );
}

/** The homework of a class as a schedule. */
export function Sets({ wanted }: { wanted: string | null }) {
  const w = words('sets').list;
  const { fetched, again } = useFetched('classes', () => call('classes'));
  const alsoLearns = me.value.person?.classes.some(({ manner }) => manner === 'learner') ?? false;
  return (
    <div class="homework wide">
      <Show of={fetched} again={again}>
        {({ classes }) => {
          const going = classes.filter(({ endedAt }) => endedAt === null);
          const chosen = classes.find(({ id }) => id === wanted) ?? going[0] ?? classes[0];
          return chosen ? (
            <OfClass chosen={chosen} classes={classes} />
          ) : (
            <>
              <Head title={words('homework').common.homework} />
              <p>{elements(w.noClass, { classes: (text) => <a href="#/classes">{text}</a> })}</p>
            </>
          );
        }}
      </Show>
      {alsoLearns && (
        <p>
          <a href={addressOf({ at: 'mine' })}>{w.myOwn}</a>
        </p>
      )}
    </div>
  );
}
