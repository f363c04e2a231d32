import { useState } from 'preact/hooks';
import type { Act } from '../../parts/act.ts';
import { Field, Form } from '../../parts/field.tsx';
import { words } from '../../words.ts';
import { asSignIn, problemOfPassword, problemOfSignIn } from './names.ts';
import { Failure, Sheet } from './sheet.tsx';

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
    <Sheet title={w.title} sheet={sheet}>
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
    </Sheet>
  );
}
