import { useState } from 'preact/hooks';
import type { Person } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { Form } from '../../../forms/form.tsx';
import { me, roleOf } from '../../../me.ts';
import { words } from '../../../words.ts';
import type { PartProps } from '../part-props.ts';

/** Finds a tutor by name and makes them tutor of the class too. */
function AddTutor({ detail, onDetail }: PartProps) {
  const { members: w, common } = words('classes');
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
          label={w.anotherTutor}
          autocomplete="off"
          optional
          value={find}
          note={w.anotherTutorNote}
          onValue={setFind}
        />
        <p>
          <Button busy={act.busy}>{common.find}</Button>
        </p>
      </Form>
      <div role="status">
        {found?.length === 0 && <p>{w.noOtherTutor}</p>}
        {found && found.length > 0 && (
          <ul class="finds">
            {found.slice(0, 20).map((person) => (
              <li key={person.id}>
                <Button busy={act.busy} onPress={() => add(person)}>
                  {w.addTutor(person.name)}
                </Button>
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
  const w = words('classes').members;
  const act = useAct();
  const tutors = detail.members.filter(({ manner }) => manner === 'tutor');
  const admin = roleOf(me.value) === 'admin';
  const remove = (person: string): void =>
    act.run(async () => onDetail(await call('removeTutor', { params: { class: detail.id, person } })));
  return (
    <section>
      <h2>{w.tutors(tutors.length)}</h2>
      {tutors.length === 0 && <p>{w.noTutor}</p>}
      <ul class="tutors">
        {tutors.map(({ id, name }) => (
          <li key={id}>
            {name}
            {admin && (
              <Button kind="plain" busy={act.busy} label={w.takeOutTutorOf(name)} onPress={() => remove(id)}>
                {w.takeOutTutor}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <Failure words={act.failure} />
      {admin && <AddTutor detail={detail} onDetail={onDetail} />}
    </section>
  );
}
