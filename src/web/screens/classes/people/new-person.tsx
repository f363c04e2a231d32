import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { PersonRole } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { Form, useForm } from '../../../forms/form.tsx';
import { problemOfName } from '../../../forms/typed.ts';
import { words } from '../../../words.ts';
import { HandedLinks } from '../handed-links.tsx';
import { RoleChoice } from './role-choice.tsx';

/** A new tutor, or anybody else, with a link to hand over. */
export function NewPerson({ onMade }: { onMade: () => Promise<void> }) {
  const { people: w, common } = words('classes');
  const [name, setName] = useState('');
  const [role, setRole] = useState<PersonRole>('tutor');
  const [made, setMade] = useState<PersonWithLink>();
  const { act, told, ...form } = useForm({ name: problemOfName(name) });
  const make = async (): Promise<void> => {
    setMade(await call('newPerson', { body: { name: name.trim(), role } }));
    setName('');
    form.anew();
    await onMade();
  };
  return (
    <section>
      <h2>{w.somebodyNew}</h2>
      {made && <HandedLinks key={made.link.address} people={[made]} />}
      <Form onSend={() => form.send(make)}>
        <Field label={common.person} autocomplete="off" value={name} problem={told.name} onValue={setName} />
        <RoleChoice name="new-role" value={role} onValue={setRole} />
        <Failure words={act.failure} />
        <p>
          <Button kind="main" busy={act.busy} meanwhile={common.oneMoment}>
            {w.makeLink}
          </Button>
        </p>
      </Form>
    </section>
  );
}
