import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { PersonRole } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { Form } from '../../../forms/form.tsx';
import { problemOfName } from '../../../forms/typed.ts';
import { words } from '../../../words.ts';
import { HandedLinks } from '../handed-links.tsx';
import { RoleChoice } from './role-choice.tsx';

/** A new tutor, or anybody else, with a link to hand over. */
export function NewPerson({ onMade }: { onMade: () => Promise<void> }) {
  const { people: w, common } = words('classes');
  const [name, setName] = useState('');
  const [role, setRole] = useState<PersonRole>('tutor');
  const [looked, setLooked] = useState(false);
  const [made, setMade] = useState<PersonWithLink>();
  const act = useAct();
  const problem = problemOfName(name);
  const make = (): void => {
    setLooked(true);
    if (problem) return;
    act.run(async () => {
      setMade(await call('newPerson', { body: { name: name.trim(), role } }));
      setName('');
      setLooked(false);
      await onMade();
    });
  };
  return (
    <section>
      <h2>{w.somebodyNew}</h2>
      {made && <HandedLinks key={made.link.address} people={[made]} />}
      <Form onSend={make}>
        <Field
          label={common.person}
          autocomplete="off"
          value={name}
          problem={looked ? problem : undefined}
          onValue={setName}
        />
        <RoleChoice name="new-role" value={role} onValue={setRole} />
        <Failure words={act.failure} />
        <p>
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? common.oneMoment : w.makeLink}
          </button>
        </p>
      </Form>
    </section>
  );
}
