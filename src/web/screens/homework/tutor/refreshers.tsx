import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import { dayOf } from '../../../moments.ts';
import { SkillTitle } from '../../../parts/written.tsx';
import { set, words } from '../../../words.ts';
import { namesOf } from './names.ts';
import { byPerson, type PersonsRefreshers } from './refreshers-by-person.ts';

const overdueDay = (text: string) => <span class="day overdue">{text}</span>;
const comingDay = (text: string) => <span class="day">{text}</span>;

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
  const w = words('sets').competence.refreshers;
  const [first] = due;
  return (
    <li>
      <details>
        <summary>
          <strong>{nameOf(person)}</strong>
          <span>
            {set(w.skills({ skills: due.length, overdue }), {
              overdue: (text) => <span class="overdue">{text}</span>,
            })}
          </span>
          {first && (
            <span>
              {first.dueAt <= now
                ? set(w.firstOverdue(first.dueAt), { since: overdueDay })
                : set(w.firstOn(first.dueAt), { day: comingDay })}
            </span>
          )}
        </summary>
        <ul class="due">
          {due.map(({ skill, dueAt }) => (
            <li key={skill}>
              <span>
                <SkillTitle skill={skill} title={titleOf(skill)} />
              </span>
              {dueAt <= now ? overdueDay(w.since(dueAt)) : comingDay(dayOf(dueAt))}
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
  const w = words('sets').competence.refreshers;
  const titles = new Map(view.matrix.skills.map(({ id, title }) => [id, title]));
  const nameOf = namesOf(view.people);
  const people = byPerson(view.refreshers, view.matrix.at);
  return (
    <section>
      <h2>{w.title}</h2>
      <label class="field narrow">
        {w.within}
        <select value={days} onChange={({ currentTarget }) => onDays(Number(currentTarget.value))}>
          {[7, 30, 90, 365].map((count) => (
            <option key={count} value={count}>
              {w.days(count)}
            </option>
          ))}
        </select>
      </label>
      {people.length === 0 ? (
        <p>{w.none}</p>
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
