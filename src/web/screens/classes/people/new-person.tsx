import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { PersonRole } from '../../../../../shared/people.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { Field, Form } from '../../../parts/field.tsx';
import { problemOfName } from '../../enter/names.ts';
import { Failure } from '../../enter/sheet.tsx';
import { HandedLinks } from '../handed-links.tsx';
import { RoleChoice } from './role-choice.tsx';

/** A new tutor, or anybody else, with a link to hand over. */
export function NewPerson({ onMade }: { onMade: () => Promise<void> }) {
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
      <h2>Somebody new</h2>
      {made && <HandedLinks key={made.link.address} people={[made]} />}
      <Form onSend={make}>
        <Field
          label="Name"
          autocomplete="off"
          value={name}
          problem={looked ? problem : undefined}
          onValue={setName}
        />
        <RoleChoice name="new-role" value={role} onValue={setRole} />
        <Failure words={act.failure} />
        <p>
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? 'One moment…' : 'Make a link to hand over'}
          </button>
        </p>
      </Form>
    </section>
  );
}
