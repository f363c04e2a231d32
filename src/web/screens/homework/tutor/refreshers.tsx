import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import { dayText } from '../moments.ts';
import { namesOf } from './names.ts';
import { byPerson, type PersonsRefreshers } from './refreshers-by-person.ts';

function Day({ at, now }: { at: number; now: number }) {
  return at <= now ? <span class="overdue">since {dayText(at)}</span> : dayText(at);
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
    <tr>
      <th scope="row">
        <details>
          <summary>
            {nameOf(person)}
            <span class="away">: the skills</span>
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
      </th>
      <td class="number">
        {due.length}
        {overdue > 0 && <span class="overdue"> ({overdue} overdue)</span>}
      </td>
      <td>{first && <Day at={first.dueAt} now={now} />}</td>
    </tr>
  );
}

/** Whose refreshers are due in so many days: a line for each person, with the skills under the name. */
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
        <table class="schedule refreshers">
          <thead>
            <tr>
              <th scope="col">Person, and which skills</th>
              <th scope="col">How many</th>
              <th scope="col">The first</th>
            </tr>
          </thead>
          <tbody>
            {people.map((of) => (
              <OfPerson
                key={of.person}
                of={of}
                nameOf={namesOf(view.people)}
                titleOf={(id) => titles.get(id) ?? id}
                now={view.matrix.at}
              />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
