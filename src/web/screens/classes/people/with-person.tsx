import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { Person } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { askMe, me, meet } from '../../../me.ts';
import { useAct } from '../../../parts/act.ts';
import { Field, Form } from '../../../parts/field.tsx';
import { problemOfName } from '../../enter/names.ts';
import { Failure } from '../../enter/sheet.tsx';
import { fileName } from '../file-name.ts';
import { HandedLinks } from '../handed-links.tsx';
import { Sure } from '../sure.tsx';
import { RoleChoice } from './role-choice.tsx';

interface Props {
  readonly person: Person;
  readonly onChanged: () => Promise<void>;
}

/** Erasing asks for the name to be typed: a slip of the finger must not be enough. */
function Erase({ person, onChanged }: Props) {
  const [typed, setTyped] = useState('');
  const same = typed.trim().toLowerCase() === person.name.trim().toLowerCase();
  return (
    <Sure
      ask="Erase this person…"
      sure="Erase for good"
      stop
      done={async () => {
        if (!same) throw new Error('Type the name as it stands above, so that it is certain who is meant.');
        await call('erasePerson', { params: { person: person.id }, query: { confirm: person.id } });
        await onChanged();
      }}
    >
      <p>
        <strong>This can’t be undone.</strong> Gone are the name, the sign-in, all answers, papers and marks
        of {person.name}. Let them download what is theirs first, or save it here.
      </p>
      <Field label={`Type ${person.name}`} autocomplete="off" value={typed} onValue={setTyped} />
    </Sure>
  );
}

/** What an administrator does for anybody. */
export function WithPerson({ person, onChanged }: Props) {
  const [name, setName] = useState(person.name);
  const [role, setRole] = useState(person.role);
  const [link, setLink] = useState<PersonWithLink>();
  const [said, setSaid] = useState('');
  const act = useAct();
  const params = { person: person.id };
  const own = person.id === me.value.person?.id;
  const problem = problemOfName(name);
  const rename = (): void => {
    if (problem) return;
    act.run(async () => {
      await call('renamePerson', { params, body: { name: name.trim() } });
      const told = own ? await askMe() : undefined;
      if (told) meet(told);
      await onChanged();
      setSaid('The name is changed.');
    });
  };
  const kept = (): void =>
    act.run(() => save('exportPerson', fileName(person.name, 'export.json'), { params }));
  return (
    <div class="with-member">
      {link && <HandedLinks key={link.link.address} people={[link]} />}
      <Form onSend={rename}>
        <Field label="Name" autocomplete="off" value={name} problem={problem} onValue={setName} />
        <p class="row">
          <button type="submit" class="button" disabled={act.busy || name === person.name}>
            Change the name
          </button>
          <button type="button" class="button" disabled={act.busy} onClick={kept}>
            All that is kept (file)
          </button>
        </p>
      </Form>
      {own ? (
        <p>This is you: your own role, link and erasing are another administrator’s to change.</p>
      ) : (
        <>
          <Sure
            ask="A new link…"
            sure="Make a link"
            done={async () => setLink(await call('newLink', { params }))}
          >
            <p>
              When it is used, {person.name} is signed out elsewhere and chooses a password anew. A link made
              before no longer works.
            </p>
          </Sure>
          <Sure
            ask="Another role…"
            sure="Change the role"
            done={async () => {
              await call('changeRole', { params, body: { role } });
              await onChanged();
            }}
          >
            <RoleChoice name={`role-${person.id}`} value={role} onValue={setRole} />
            <p>{person.name} is signed out everywhere and signs in again.</p>
          </Sure>
          <Sure
            ask="Sign out everywhere…"
            sure="Sign out everywhere"
            done={async () => {
              const { ended } = await call('endSessionsOf', { params });
              setSaid(`Sessions ended: ${ended}.`);
            }}
          >
            <p>For a lost device. {person.name} signs in again with the password or a new link.</p>
          </Sure>
          <Erase person={person} onChanged={onChanged} />
        </>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </div>
  );
}
