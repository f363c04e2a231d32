import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { PersonWithLink } from '../../../../shared/api-people.ts';
import { call } from '../../api.ts';
import { Button } from '../../forms/button.tsx';
import { Confirm } from '../../forms/confirm.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { problemOfName } from '../../forms/typed.ts';
import { askMe, me, reconcileMe } from '../../me.ts';
import { words } from '../../words.ts';
import { HandedLinks } from './handed-links.tsx';

interface Props {
  readonly person: { readonly id: string; readonly name: string };
  /** The class for whose slips a new link is. */
  readonly of?: { readonly id: string; readonly title: string };
  /** What of theirs can be had as a file, and under which words. */
  readonly file: { readonly label: string; readonly save: () => Promise<void> };
  readonly means: {
    readonly newLink: string;
    readonly signOut: string;
    readonly signedOut: (sessions: number) => string;
  };
  /** Has what is shown of them fetched again. */
  readonly onChanged: () => Promise<void>;
  /** What else is done for them: before they are signed out everywhere, and after. */
  readonly before?: ComponentChildren;
  readonly after?: ComponentChildren;
  /** Said instead, where nothing but the name may be changed. */
  readonly instead?: string | undefined;
}

/** What is done for somebody: another name, a file, a new link, signing out, and what is done for just such people. */
export function PersonForm({ person, of, file, means, onChanged, before, after, instead }: Props) {
  const { common } = words('classes');
  const [name, setName] = useState(person.name);
  const [link, setLink] = useState<PersonWithLink>();
  const [said, setSaid] = useState('');
  const problem = problemOfName(name);
  const { act, send } = useForm({ problem });
  const params = { person: person.id };
  const rename = async (): Promise<void> => {
    await call('renamePerson', { params, body: { name: name.trim() } });
    const told = person.id === me.value.person?.id ? await askMe() : undefined;
    if (told) reconcileMe(told);
    await onChanged();
    setSaid(common.nameChanged);
  };
  return (
    <div class="with-member">
      {link && <HandedLinks key={link.link.address} people={[link]} {...(of ? { of } : {})} />}
      <Form onSend={() => send(rename)}>
        <Field label={common.person} autocomplete="off" value={name} problem={problem} onValue={setName} />
        <p class="row">
          <Button busy={act.busy} disabled={name === person.name}>
            {common.changeName}
          </Button>
          <Button busy={act.busy} onPress={() => act.run(file.save)}>
            {file.label}
          </Button>
        </p>
      </Form>
      {instead ? (
        <p>{instead}</p>
      ) : (
        <>
          <Confirm
            ask={common.newLink}
            sure={common.makeLink}
            done={async () => setLink(await call('newLink', { params }))}
          >
            <p>{means.newLink}</p>
          </Confirm>
          {before}
          <Confirm
            ask={common.signOutEverywhereAsk}
            sure={common.signOutEverywhere}
            done={async () => setSaid(means.signedOut((await call('endSessionsOf', { params })).ended))}
          >
            <p>{means.signOut}</p>
          </Confirm>
          {after}
        </>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </div>
  );
}
