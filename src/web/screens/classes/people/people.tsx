import { useEffect, useState } from 'preact/hooks';
import type { Person } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Form } from '../../../forms/form.tsx';
import { dayOf } from '../../../moments.ts';
import { words } from '../../../words.ts';
import { Find } from '../find.tsx';
import { PeopleSchedule } from '../people-schedule.tsx';
import { NewPerson } from './new-person.tsx';
import { WithPerson } from './with-person.tsx';

const A_PAGE = 100;

interface Page {
  readonly from: number;
  readonly total: number;
  readonly people: readonly Person[];
}

/** The pages before and after. */
function Turning({ page: { from, total, people }, busy, onLook }: TurningProps) {
  const w = words('classes').people;
  return (
    <p class="row">
      <Button busy={busy} disabled={from === 0} onPress={() => onLook(Math.max(0, from - A_PAGE))}>
        {w.before}
      </Button>
      <Button busy={busy} disabled={from + people.length >= total} onPress={() => onLook(from + A_PAGE)}>
        {w.more}
      </Button>
    </p>
  );
}

interface TurningProps {
  readonly page: Page;
  readonly busy: boolean;
  readonly onLook: (from: number) => void;
}

/** Everybody there is, for the administrator. */
export function People() {
  const { people: w, common } = words('classes');
  const [find, setFind] = useState('');
  const [page, setPage] = useState<Page>();
  const act = useAct();
  const fetchPage = async (from: number): Promise<void> =>
    setPage({ from, ...(await call('people', { query: { find: find.trim(), from, limit: A_PAGE } })) });
  const look = (from: number): void => act.run(() => fetchPage(from));
  useEffect(() => {
    look(0);
    // Once, when it appears; `look` is another function each time.
  }, []);
  return (
    <>
      <p class="back">
        <a href="#/classes">{w.back}</a>
      </p>
      <h1>{w.title}</h1>
      <NewPerson onMade={() => fetchPage(0)} />
      <section>
        <h2>{w.everybody}</h2>
        <Form class="row finding" byBrowser onSend={() => look(0)}>
          <Find id="find-person" label={w.partOfName} value={find} onValue={setFind} />
          <Button busy={act.busy}>{common.find}</Button>
        </Form>
        <Failure words={act.failure} />
        <p role="status">{page ? rangeOf(page) : common.fetching}</p>
        {page && page.people.length > 0 && (
          <PeopleSchedule
            people={page.people}
            role={{ title: w.role, beside: true, cell: ({ role }) => w.roles[role] }}
            since={({ createdAt }) => dayOf(createdAt)}
          >
            {(person) => <WithPerson person={person} onChanged={() => fetchPage(page.from)} />}
          </PeopleSchedule>
        )}
        {page && page.total > A_PAGE && <Turning page={page} busy={act.busy} onLook={look} />}
      </section>
    </>
  );
}

/** Which of how many are shown. */
function rangeOf({ from, total, people }: Page): string {
  const w = words('classes').people;
  return total === 0 ? w.nobody : w.range({ from: from + 1, to: from + people.length, total });
}
