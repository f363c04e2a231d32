import { NewPasswordField, SignInNameField } from '../../forms/account-fields.tsx';
import type { Act } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { problemOfPassword, problemOfSignIn } from '../../forms/typed.ts';
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
  const { told, ...form } = useForm({
    signIn: problemOfSignIn(account.signIn),
    password: problemOfPassword(account.password),
  });
  const taken = act.code === 'name-taken' ? act.failure : undefined;
  const change = (now: Account): void => {
    act.clear();
    onAccount(now);
  };
  return (
    <EntrySheet title={w.title} sheet={sheet}>
      <Form onSend={() => form.send(async () => onSend())}>
        <SignInNameField
          first
          value={account.signIn}
          problem={taken ?? told.signIn}
          onValue={(signIn) => change({ ...account, signIn })}
        />
        <NewPasswordField
          value={account.password}
          problem={told.password}
          onValue={(password) => change({ ...account, password })}
        />
        <Failure words={taken ? '' : act.failure} />
        <p class="row">
          <Button kind="main" busy={act.busy} meanwhile={oneMoment}>
            {send}
          </Button>
          <Button kind="plain" onPress={onBack}>
            {back}
          </Button>
        </p>
      </Form>
    </EntrySheet>
  );
}
