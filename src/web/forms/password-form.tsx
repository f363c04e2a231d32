import { useState } from 'preact/hooks';
import type { Me } from '../../../shared/api-people.ts';
import { call } from '../api.ts';
import { setMe } from '../me.ts';
import { words } from '../words.ts';
import { NewPasswordField, PasswordSoFarField, SignInNameField } from './account-fields.tsx';
import { Button } from './button.tsx';
import { Failure } from './failure.tsx';
import { Form, useForm } from './form.tsx';
import { asSignIn, offeredSignIn, problemOfPassword, problemOfSignIn } from './typed.ts';

interface Props {
  readonly person: NonNullable<Me['person']>;
  readonly send: string;
  /** It is what the screen is for: the first field gets the focus. */
  readonly first?: boolean;
  readonly onDone: () => void;
}

/** The browser's store of passwords has to know whose it is. */
const WhosePassword = ({ signIn }: { signIn: string }) => (
  <input
    class="away"
    type="text"
    name="username"
    autocomplete="username"
    value={signIn}
    readOnly
    tabIndex={-1}
    aria-hidden="true"
  />
);

/** A password, chosen or changed; who has no name for signing in yet chooses that too. */
export function PasswordForm({ person, send, first = false, onDone }: Props) {
  const { account: w, oneMoment } = words('enter');
  const [signIn, setSignIn] = useState(person.signIn ?? offeredSignIn(person.name));
  const [old, setOld] = useState('');
  const [password, setPassword] = useState('');
  const named = person.signIn !== null;
  const { act, told, ...form } = useForm({
    signIn: named ? undefined : problemOfSignIn(signIn),
    old: person.hasPassword && old === '' ? w.noPasswordSoFar : undefined,
    password: problemOfPassword(password),
  });
  const refused = act.code === 'sign-in-refused' ? w.anotherSoFar : undefined;
  const taken = act.code === 'name-taken' ? act.failure : undefined;
  const set = async (): Promise<void> => {
    const body = {
      password,
      ...(person.hasPassword ? { old } : {}),
      ...(named ? {} : { signIn: asSignIn(signIn) }),
    };
    setMe(await call('setPassword', { body }));
    setOld('');
    setPassword('');
    form.anew();
    onDone();
  };
  return (
    <Form onSend={() => form.send(set)}>
      {named ? (
        <WhosePassword signIn={signIn} />
      ) : (
        <SignInNameField
          first={first}
          value={signIn}
          problem={taken ?? told.signIn}
          onValue={act.typing(setSignIn)}
        />
      )}
      {person.hasPassword && (
        <PasswordSoFarField value={old} problem={refused ?? told.old} onValue={act.typing(setOld)} />
      )}
      <NewPasswordField
        label={person.hasPassword ? w.newPassword : w.password}
        value={password}
        problem={told.password}
        onValue={act.typing(setPassword)}
      />
      <Failure words={refused || taken ? '' : act.failure} />
      <p>
        <Button kind="main" busy={act.busy} meanwhile={oneMoment}>
          {send}
        </Button>
      </p>
    </Form>
  );
}
