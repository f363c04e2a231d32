import { useState } from 'preact/hooks';
import type { Person } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { me, roleOf } from '../../../me.ts';
import { useAct } from '../../../parts/act.ts';
import { Field, Form } from '../../../parts/field.tsx';
import { Failure } from '../../enter/sheet.tsx';
import type { PartProps } from '../class.tsx';

/** Finds a tutor by name and makes them tutor of the class too. */
function AddTutor({ detail, onDetail }: PartProps) {
  const [find, setFind] = useState('');
  const [found, setFound] = useState<readonly Person[]>();
  const act = useAct();
  const already = new Set(detail.members.filter(({ manner }) => manner === 'tutor').map(({ id }) => id));
  const look = (): void =>
    act.run(async () => {
      const { people } = await call('people', { query: { find: find.trim(), limit: 200 } });
      setFound(people.filter(({ id, role }) => role !== 'learner' && !already.has(id)));
    });
  const add = (person: Person): void =>
    act.run(async () => {
      onDetail(await call('addTutor', { params: { class: detail.id }, body: { person: person.id } }));
      setFound(undefined);
      setFind('');
    });
  return (
    <>
      <Form onSend={look}>
        <Field
          label="Another tutor"
          autocomplete="off"
          optional
          value={find}
          note="Part of the name; everybody who is a tutor where it stays empty."
          onValue={setFind}
        />
        <p>
          <button type="submit" class="button" disabled={act.busy}>
            Find
          </button>
        </p>
      </Form>
      <div role="status">
        {found?.length === 0 && <p>There is no other tutor of that name.</p>}
        {found && found.length > 0 && (
          <ul class="finds">
            {found.slice(0, 20).map((person) => (
              <li key={person.id}>
                <button type="button" class="button" disabled={act.busy} onClick={() => add(person)}>
                  Add {person.name}
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
      <Failure words={act.failure} />
    </>
  );
}

/** Whose class it is. */
export function Tutors({ detail, onDetail }: PartProps) {
  const act = useAct();
  const tutors = detail.members.filter(({ manner }) => manner === 'tutor');
  const admin = roleOf(me.value) === 'admin';
  const remove = (person: string): void =>
    act.run(async () => onDetail(await call('removeTutor', { params: { class: detail.id, person } })));
  return (
    <section>
      <h2>{tutors.length === 1 ? 'Tutor' : 'Tutors'}</h2>
      {tutors.length === 0 && <p>Nobody.</p>}
      <ul class="tutors">
        {tutors.map(({ id, name }) => (
          <li key={id}>
            {name}
            {admin && (
              <button
                type="button"
                class="button plain"
                disabled={act.busy}
                aria-label={`Take out ${name} as tutor`}
                onClick={() => remove(id)}
              >
                Take out
              </button>
            )}
          </li>
        ))}
      </ul>
      <Failure words={act.failure} />
      {admin && <AddTutor detail={detail} onDetail={onDetail} />}
    </section>
  );
}
