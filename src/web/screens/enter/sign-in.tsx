import { useState } from 'preact/hooks';
import type { Me } from '../../../../shared/api-people.ts';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
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
  const [looked, setLooked] = useState(false);
  const act = useAct();
  const refused = act.code === 'sign-in-refused' ? act.failure : undefined;
  const send = (): void => {
    setLooked(true);
    if (signIn.trim() === '' || password === '') return;
    act.run(async () => {
      onDone(await call('signIn', { body: { signIn: asSignIn(signIn), password } }));
    });
  };
  return (
    <Form onSend={send}>
      <Field
        label={w.name}
        name="username"
        kind="exact"
        autocomplete="username"
        first={!known}
        value={signIn}
        problem={looked && signIn.trim() === '' ? w.noName : undefined}
        onValue={setSignIn}
      />
      <Field
        label={w.password}
        name="password"
        kind="password"
        autocomplete="current-password"
        first={known !== undefined}
        value={password}
        problem={refused ?? (looked && password === '' ? w.noPassword : undefined)}
        onValue={(typed) => {
          act.clear();
          setPassword(typed);
        }}
      />
      <Failure words={refused ? '' : act.failure} />
      <p>
        <button type="submit" class="button main" disabled={act.busy}>
          {act.busy ? oneMoment : w.signIn}
        </button>
      </p>
    </Form>
  );
}
