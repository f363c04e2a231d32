import { useEffect, useState } from 'preact/hooks';
import type { Person } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Failure } from '../../../forms/failure.tsx';
import { dayOf } from '../../../parts/moment.ts';
import { words } from '../../../words.ts';
import { LookAfter } from '../look-after.tsx';
import { NewPerson } from './new-person.tsx';
import { WithPerson } from './with-person.tsx';

const A_PAGE = 100;

interface LineProps {
  readonly person: Person;
  readonly open: boolean;
  readonly onOpen: (open: boolean) => void;
  readonly onChanged: () => Promise<void>;
}

function Line({ person, open, onOpen, onChanged }: LineProps) {
  const { people: w, common } = words('classes');
  const { id, name, role, signIn, hasPassword, createdAt } = person;
  return (
    <>
      <tr>
        <th scope="row">{name}</th>
        <td data-of={w.role}>{w.roles[role]}</td>
        <td data-of={common.signsIn}>{hasPassword ? signIn : common.byLink}</td>
        <td data-of={common.since}>{dayOf(createdAt)}</td>
        <td>
          <LookAfter id={id} name={name} open={open} onOpen={onOpen} />
        </td>
      </tr>
      {open && (
        <tr id={`with-${id}`} class="opened">
          <td colSpan={5}>
            <WithPerson person={person} onChanged={onChanged} />
          </td>
        </tr>
      )}
    </>
  );
}

/** Everybody there is, for the administrator. */
export function People() {
  const { people: w, common } = words('classes');
  const [find, setFind] = useState('');
  const [from, setFrom] = useState(0);
  const [page, setPage] = useState<{ total: number; people: readonly Person[] }>();
  const [open, setOpen] = useState<string>();
  const act = useAct();
  const fetchPage = async (at: number): Promise<void> => {
    setPage(await call('people', { query: { find: find.trim(), from: at, limit: A_PAGE } }));
    setFrom(at);
  };
  const look = (at: number): void => act.run(() => fetchPage(at));
  useEffect(() => {
    look(0);
    // Once, when it appears; `look` is another function each time.
  }, []);
  const last = from + (page?.people.length ?? 0);
  return (
    <>
      <p class="back">
        <a href="#/classes">{w.back}</a>
      </p>
      <h1>{w.title}</h1>
      <NewPerson onMade={() => fetchPage(0)} />
      <section>
        <h2>{w.everybody}</h2>
        <form
          class="row finding"
          onSubmit={(event) => {
            event.preventDefault();
            return look(0);
          }}
        >
          <p class="entry">
            <label for="find-person">{w.partOfName}</label>
            <input
              id="find-person"
              type="search"
              autocomplete="off"
              value={find}
              onInput={({ currentTarget }) => setFind(currentTarget.value)}
            />
          </p>
          <button type="submit" class="button" disabled={act.busy}>
            {common.find}
          </button>
        </form>
        <Failure words={act.failure} />
        <p role="status">
          {page
            ? page.total === 0
              ? w.nobody
              : w.range({ from: from + 1, to: last, total: page.total })
            : common.fetching}
        </p>
        {page && page.people.length > 0 && (
          <table class="roll folds">
            <thead>
              <tr>
                <th scope="col">{common.person}</th>
                <th scope="col">{w.role}</th>
                <th scope="col">{common.signsIn}</th>
                <th scope="col">{common.since}</th>
                <th scope="col">
                  <span class="away">{common.lookAfter}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {page.people.map((person) => (
                <Line
                  key={person.id}
                  person={person}
                  open={open === person.id}
                  onOpen={(now) => setOpen(now ? person.id : undefined)}
                  onChanged={() => fetchPage(from)}
                />
              ))}
            </tbody>
          </table>
        )}
        {page && page.total > A_PAGE && (
          <p class="row">
            <button
              type="button"
              class="button"
              disabled={act.busy || from === 0}
              onClick={() => look(Math.max(0, from - A_PAGE))}
            >
              {w.before}
            </button>
            <button
              type="button"
              class="button"
              disabled={act.busy || last >= page.total}
              onClick={() => look(from + A_PAGE)}
            >
              {w.more}
            </button>
          </p>
        )}
      </section>
    </>
  );
}
