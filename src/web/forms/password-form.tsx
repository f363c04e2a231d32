import { useState } from 'preact/hooks';
import type { Me } from '../../../shared/api-people.ts';
import { call } from '../api.ts';
import { become } from '../me.ts';
import { words } from '../words.ts';
import { useAct } from './act.ts';
import { Failure } from './failure.tsx';
import { Field } from './field.tsx';
import { Form } from './form.tsx';
import { asSignIn, offeredSignIn, problemOfPassword, problemOfSignIn } from './typed.ts';

interface Props {
  readonly person: NonNullable<Me['person']>;
  readonly send: string;
  /** It is what the screen is for: the first field gets the focus. */
  readonly first?: boolean;
  readonly onDone: () => void;
}

/** A password, chosen or changed; who has no name for signing in yet chooses that too. */
export function PasswordForm({ person, send, first = false, onDone }: Props) {
  const { account: w, oneMoment } = words('enter');
  const [signIn, setSignIn] = useState(person.signIn ?? offeredSignIn(person.name));
  const [old, setOld] = useState('');
  const [password, setPassword] = useState('');
  const [looked, setLooked] = useState(false);
  const act = useAct();
  const named = person.signIn !== null;
  const problems = {
    signIn: named ? undefined : problemOfSignIn(signIn),
    old: person.hasPassword && old === '' ? w.noPasswordSoFar : undefined,
    password: problemOfPassword(password),
  };
  const refused = act.code === 'sign-in-refused' ? w.anotherSoFar : undefined;
  const taken = act.code === 'name-taken' ? act.failure : undefined;
  const set = (): void => {
    setLooked(true);
    if (problems.signIn || problems.old || problems.password) return;
    act.run(async () => {
      const body = {
        password,
        ...(person.hasPassword ? { old } : {}),
        ...(named ? {} : { signIn: asSignIn(signIn) }),
      };
      become(await call('setPassword', { body }));
      setOld('');
      setPassword('');
      setLooked(false);
      onDone();
    });
  };
  const typing =
    (keep: (typed: string) => void) =>
    (typed: string): void => {
      act.clear();
      keep(typed);
    };
  return (
    <Form onSend={set}>
      {named ? (
        // The browser's store of passwords has to know whose it is.
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
      ) : (
        <Field
          label={w.name}
          name="username"
          kind="exact"
          autocomplete="username"
          first={first}
          value={signIn}
          note={asSignIn(signIn) !== signIn ? w.signsInAs(asSignIn(signIn)) : w.nameNote}
          problem={taken ?? (looked ? problems.signIn : undefined)}
          onValue={typing(setSignIn)}
        />
      )}
      {person.hasPassword && (
        <Field
          label={w.passwordSoFar}
          name="password"
          kind="password"
          autocomplete="current-password"
          value={old}
          problem={refused ?? (looked ? problems.old : undefined)}
          onValue={typing(setOld)}
        />
      )}
      <Field
        label={person.hasPassword ? w.newPassword : w.password}
        name="new-password"
        kind="password"
        autocomplete="new-password"
        value={password}
        note={w.passwordNote}
        problem={looked ? problems.password : undefined}
        onValue={typing(setPassword)}
      />
      <Failure words={refused || taken ? '' : act.failure} />
      <p>
        <button type="submit" class="button main" disabled={act.busy}>
          {act.busy ? oneMoment : send}
        </button>
      </p>
    </Form>
  );
}
