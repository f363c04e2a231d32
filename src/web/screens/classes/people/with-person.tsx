import { useState } from 'preact/hooks';
import type { Person } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { Confirm } from '../../../forms/confirm.tsx';
import { Field } from '../../../forms/field.tsx';
import { me } from '../../../me.ts';
import { set, words } from '../../../words.ts';
import { fileName } from '../file-name.ts';
import { PersonForm } from '../person-form.tsx';
import { RoleChoice } from './role-choice.tsx';

interface Props {
  readonly person: Person;
  readonly onChanged: () => Promise<void>;
}

/** Erasing asks for the name to be typed: a slip of the finger must not be enough. */
function Erase({ person, onChanged }: Props) {
  const w = words('classes').people.erase;
  const [typed, setTyped] = useState('');
  const same = typed.trim().toLowerCase() === person.name.trim().toLowerCase();
  return (
    <Confirm
      ask={w.ask}
      sure={w.sure}
      stop
      done={async () => {
        if (!same) throw new Error(w.typeAsAbove);
        await call('erasePerson', { params: { person: person.id }, query: { confirm: person.id } });
        await onChanged();
      }}
    >
      <p>{set(w.means, { strong: (text) => <strong>{text}</strong>, name: person.name })}</p>
      <Field label={w.type(person.name)} autocomplete="off" value={typed} onValue={setTyped} />
    </Confirm>
  );
}

function AnotherRole({ person, onChanged }: Props) {
  const w = words('classes').people;
  const [role, setRole] = useState(person.role);
  return (
    <Confirm
      ask={w.anotherRole}
      sure={w.changeRole}
      done={async () => {
        await call('changeRole', { params: { person: person.id }, body: { role } });
        await onChanged();
      }}
    >
      <RoleChoice name={`role-${person.id}`} value={role} onValue={setRole} />
      <p>{w.changeRoleMeans(person.name)}</p>
    </Confirm>
  );
}

/** What an administrator does for anybody. */
export function WithPerson({ person, onChanged }: Props) {
  const { people: w, files } = words('classes');
  const { id, name } = person;
  return (
    <PersonForm
      person={person}
      file={{
        label: w.everything,
        save: () => save('exportPerson', fileName(name, files.everything), { params: { person: id } }),
      }}
      means={{ newLink: w.newLinkMeans(name), signOut: w.signOutMeans(name), signedOut: w.sessionsEnded }}
      onChanged={onChanged}
      before={<AnotherRole person={person} onChanged={onChanged} />}
      after={<Erase person={person} onChanged={onChanged} />}
      instead={id === me.value.person?.id ? w.thisIsYou : undefined}
    />
  );
}
