import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../../shared/api-people.ts';
import type { Person } from '../../../../../shared/people.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Confirm } from '../../../forms/confirm.tsx';
import { Failure } from '../../../forms/failure.tsx';
import { Field } from '../../../forms/field.tsx';
import { Form } from '../../../forms/form.tsx';
import { problemOfName } from '../../../forms/typed.ts';
import { askMe, me, meet } from '../../../me.ts';
import { set, words } from '../../../words.ts';
import { fileName } from '../file-name.ts';
import { HandedLinks } from '../handed-links.tsx';
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

/** What an administrator does for anybody. */
export function WithPerson({ person, onChanged }: Props) {
  const { people: w, common, files } = words('classes');
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
      setSaid(common.nameChanged);
    });
  };
  const kept = (): void =>
    act.run(() => save('exportPerson', fileName(person.name, files.everything), { params }));
  return (
    <div class="with-member">
      {link && <HandedLinks key={link.link.address} people={[link]} />}
      <Form onSend={rename}>
        <Field label={common.person} autocomplete="off" value={name} problem={problem} onValue={setName} />
        <p class="row">
          <button type="submit" class="button" disabled={act.busy || name === person.name}>
            {common.changeName}
          </button>
          <button type="button" class="button" disabled={act.busy} onClick={kept}>
            {w.everything}
          </button>
        </p>
      </Form>
      {own ? (
        <p>{w.thisIsYou}</p>
      ) : (
        <>
          <Confirm
            ask={common.newLink}
            sure={common.makeLink}
            done={async () => setLink(await call('newLink', { params }))}
          >
            <p>{w.newLinkMeans(person.name)}</p>
          </Confirm>
          <Confirm
            ask={w.anotherRole}
            sure={w.changeRole}
            done={async () => {
              await call('changeRole', { params, body: { role } });
              await onChanged();
            }}
          >
            <RoleChoice name={`role-${person.id}`} value={role} onValue={setRole} />
            <p>{w.changeRoleMeans(person.name)}</p>
          </Confirm>
          <Confirm
            ask={common.signOutEverywhereAsk}
            sure={common.signOutEverywhere}
            done={async () => {
              const { ended } = await call('endSessionsOf', { params });
              setSaid(w.sessionsEnded(ended));
            }}
          >
            <p>{w.signOutMeans(person.name)}</p>
          </Confirm>
          <Erase person={person} onChanged={onChanged} />
        </>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </div>
  );
}
