import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import { dayText } from '../moments.ts';
import { namesOf } from './names.ts';
import { byPerson, type PersonsRefreshers } from './refreshers-by-person.ts';

function Day({ at, now }: { at: number; now: number }) {
  return at <= now ? (
    <span class="day overdue">since {dayText(at)}</span>
  ) : (
    <span class="day">{dayText(at)}</span>
  );
}

function OfPerson({
  of: { person, due, overdue },
  nameOf,
  titleOf,
  now,
}: {
  of: PersonsRefreshers;
  nameOf: (id: string) => string;
  titleOf: (id: string) => string;
  now: number;
}) {
  const [first] = due;
  return (
    <li>
      <details>
        <summary>
          <strong>{nameOf(person)}</strong>
          <span>
            {due.length === 1 ? '1 skill' : `${due.length} skills`}
            {overdue > 0 && <span class="overdue">, {overdue} overdue</span>}
          </span>
          {first && (
            <span>
              {first.dueAt <= now ? 'overdue' : 'first on'} <Day at={first.dueAt} now={now} />
            </span>
          )}
        </summary>
        <ul class="due">
          {due.map(({ skill, dueAt }) => (
            <li key={skill}>
              <span>{titleOf(skill)}</span>
              <Day at={dueAt} now={now} />
            </li>
          ))}
        </ul>
      </details>
    </li>
  );
}

/** Whose refreshers are due in so many days: a line for each person, which opens to the skills. */
export function Refreshers({
  view,
  days,
  onDays,
}: {
  view: CompetenceView;
  days: number;
  onDays: (days: number) => void;
}) {
  const titles = new Map(view.matrix.skills.map(({ id, title }) => [id, title]));
  const nameOf = namesOf(view.people);
  const people = byPerson(view.refreshers, view.matrix.at);
  return (
    <section>
      <h2>Refreshers due</h2>
      <label class="field narrow">
        Within
        <select value={days} onChange={({ currentTarget }) => onDays(Number(currentTarget.value))}>
          {[7, 30, 90, 365].map((count) => (
            <option key={count} value={count}>
              {count} days
            </option>
          ))}
        </select>
      </label>
      {people.length === 0 ? (
        <p>None.</p>
      ) : (
        <ul class="set-list refreshers">
          {people.map((of) => (
            <OfPerson
              key={of.person}
              of={of}
              nameOf={nameOf}
              titleOf={(id) => titles.get(id) ?? id}
              now={view.matrix.at}
            />
          ))}
        </ul>
      )}
    </section>
  );
}
