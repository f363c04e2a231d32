import { useState } from 'preact/hooks';
import type { Me } from '../../../../shared/api-people.ts';
import { call } from '../../api.ts';
import { Button } from '../../forms/button.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { asSignIn } from '../../forms/typed.ts';
import { words } from '../../words.ts';

interface Props {
  /** The name that is filled in already. */
  readonly known?: string | undefined;
  readonly onDone: (now: Me) => void;
}

/** Name and password. */
export function SignInForm({ known, onDone }: Props) {
  const { signIn: w, oneMoment } = words('enter');
  const [signIn, setSignIn] = useState(known ?? '');
  const [password, setPassword] = useState('');
  const { act, told, ...form } = useForm({
    signIn: signIn.trim() === '' ? w.noName : undefined,
    password: password === '' ? w.noPassword : undefined,
  });
  const refused = act.code === 'sign-in-refused' ? act.failure : undefined;
  const send = async (): Promise<void> =>
    onDone(await call('signIn', { body: { signIn: asSignIn(signIn), password } }));
  return (
    <Form onSend={() => form.send(send)}>
      <Field
        label={w.name}
        name="username"
        kind="exact"
        autocomplete="username"
        first={!known}
        value={signIn}
        problem={told.signIn}
        onValue={setSignIn}
      />
      <Field
        label={w.password}
        name="password"
        kind="password"
        autocomplete="current-password"
        first={known !== undefined}
        value={password}
        problem={refused ?? told.password}
        onValue={act.typing(setPassword)}
      />
      <Failure words={refused ? '' : act.failure} />
      <p>
        <Button kind="main" busy={act.busy} meanwhile={oneMoment}>
          {w.signIn}
        </Button>
      </p>
    </Form>
  );
}
