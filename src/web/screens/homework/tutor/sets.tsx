import type { SetRow } from '../../../../../shared/homework-views.ts';
import type { ClassSummary } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { me } from '../../../me.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { addressOf, goTo } from '../where.ts';
import { stateText } from './words.ts';

function Schedule({ sets }: { sets: readonly SetRow[] }) {
  return (
    <table class="schedule">
      <caption>Sets, the newest first</caption>
      <thead>
        <tr>
          <th scope="col">Set</th>
          <th scope="col">Stands</th>
          <th scope="col" class="minor">
            Items
          </th>
          <th scope="col" class="minor">
            Marks
          </th>
          <th scope="col">Handed in</th>
        </tr>
      </thead>
      <tbody>
        {sets.map((set) => (
          <tr key={set.id}>
            <th scope="row">
              <a href={addressOf({ at: 'set', set: set.id })}>{set.title}</a>
            </th>
            <td>{stateText(set.state, set)}</td>
            <td class="number minor">{set.items}</td>
            <td class="number minor">{set.outOf}</td>
            <td class="number">{set.issuedAt === null ? '–' : `${set.handedIn} of ${set.learners}`}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function OfClass({ chosen, classes }: { chosen: ClassSummary; classes: readonly ClassSummary[] }) {
  const { fetched, again } = useFetched(chosen.id, () =>
    call('classHomework', { params: { class: chosen.id } }),
  );
  return (
    <>
      <Head
        title="Homework"
        cells={[chosen.title, chosen.learners === 1 ? '1 learner' : `${chosen.learners} learners`]}
      />
      {classes.length > 1 && (
        <label class="field">
          Class
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
          New set
        </a>
        <a href={addressOf({ at: 'term', class: chosen.id })}>All sets together</a>
        <a href={addressOf({ at: 'competence', class: chosen.id })}>Who can do what</a>
      </p>
      <Show of={fetched} again={again}>
        {({ sets }) =>
          sets.length === 0 ? <p>No sets yet. A new one takes two minutes.</p> : <Schedule sets={sets} />
        }
      </Show>
    </>
  );
}

/** The homework of a class as a schedule. */
export function Sets({ wanted }: { wanted: string | null }) {
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
              <Head title="Homework" />
              <p>
                There is no class yet. <a href="#/classes">Make one first</a>, then set it homework.
              </p>
            </>
          );
        }}
      </Show>
      {alsoLearns && (
        <p>
          <a href={addressOf({ at: 'mine' })}>My own homework</a>
        </p>
      )}
    </div>
  );
}
