import { useState } from 'preact/hooks';
import type { Act } from '../../forms/act.ts';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { asSignIn, problemOfPassword, problemOfSignIn } from '../../forms/typed.ts';
import { words } from '../../words.ts';

/** What is typed on it, kept by whoever shows it, so that going back loses nothing. */
export interface Account {
  readonly signIn: string;
  readonly password: string;
}

interface Props {
  readonly sheet: readonly [number, number];
  readonly account: Account;
  readonly onAccount: (account: Account) => void;
  readonly act: Act;
  /** What the button says. */
  readonly send: string;
  readonly onSend: () => void;
  readonly onBack: () => void;
}

/** The last sheet on the way in: how somebody will sign in from now on. */
export function AccountSheet({ sheet, account, onAccount, act, send, onSend, onBack }: Props) {
  const { account: w, back, oneMoment } = words('enter');
  const [looked, setLooked] = useState(false);
  const problems = {
    signIn: problemOfSignIn(account.signIn),
    password: problemOfPassword(account.password),
  };
  const taken = act.code === 'name-taken' ? act.failure : undefined;
  const read = asSignIn(account.signIn);
  const change = (now: Account): void => {
    act.clear();
    onAccount(now);
  };
  return (
    <EntrySheet title={w.title} sheet={sheet}>
      <Form
        onSend={() => {
          setLooked(true);
          if (!problems.signIn && !problems.password) onSend();
        }}
      >
        <Field
          label={w.name}
          name="username"
          kind="exact"
          autocomplete="username"
          first
          value={account.signIn}
          note={read && read !== account.signIn ? w.signsInAs(read) : w.nameNote}
          problem={taken ?? (looked ? problems.signIn : undefined)}
          onValue={(signIn) => change({ ...account, signIn })}
        />
        <Field
          label={w.password}
          name="new-password"
          kind="password"
          autocomplete="new-password"
          value={account.password}
          note={w.passwordNote}
          problem={looked ? problems.password : undefined}
          onValue={(password) => change({ ...account, password })}
        />
        <Failure words={taken ? '' : act.failure} />
        <p class="row">
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? oneMoment : send}
          </button>
          <button type="button" class="button plain" onClick={onBack}>
            {back}
          </button>
        </p>
      </Form>
    </EntrySheet>
  );
}
