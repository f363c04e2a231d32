import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Field } from '../../forms/field.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { asSignIn, offeredSignIn } from '../../forms/typed.ts';
import { words } from '../../words.ts';
import { type Account, AccountSheet } from './account-sheet.tsx';
import { goIn } from './go-in.ts';
import { NameSheet } from './name-sheet.tsx';

/** The key that the server prints where it was started. */
function KeySheet({
  value,
  refused,
  onValue,
  onNext,
}: {
  value: string;
  refused: string | undefined;
  onValue: (value: string) => void;
  onNext: () => void;
}) {
  const { firstRun: w, next } = words('enter');
  const { told, send } = useForm({ key: value.trim() === '' ? w.noKey : undefined });
  return (
    <EntrySheet title={w.title} sheet={[1, 3]}>
      <p>{w.what}</p>
      <Form onSend={() => send(async () => onNext())}>
        <Field
          label={w.key}
          name="key"
          kind="code"
          autocomplete="off"
          first
          value={value}
          note={w.keyNote}
          problem={refused ?? told.key}
          onValue={onValue}
        />
        <p>
          <Button kind="main">{next}</Button>
        </p>
      </Form>
    </EntrySheet>
  );
}

/** The very first visit: whoever can read what the server prints becomes its administrator. */
export function FirstRun() {
  const { firstRun: w } = words('enter');
  const [step, setStep] = useState<'key' | 'name' | 'account'>('key');
  const [key, setKey] = useState('');
  const [name, setName] = useState('');
  const [account, setAccount] = useState<Account>({ signIn: '', password: '' });
  const act = useAct();
  const refused = act.code === 'first-run-refused' ? act.failure : undefined;

  if (step === 'key' || refused)
    return (
      <KeySheet
        value={key}
        refused={refused}
        onValue={(typed) => {
          act.clear();
          setStep('key');
          setKey(typed);
        }}
        onNext={() => {
          act.clear();
          setStep(name === '' ? 'name' : 'account');
        }}
      />
    );
  if (step === 'name')
    return (
      <NameSheet
        sheet={[2, 3]}
        note={w.nameNote}
        value={name}
        onValue={setName}
        onNext={() => {
          if (account.signIn === '') setAccount({ ...account, signIn: offeredSignIn(name) });
          setStep('account');
        }}
        onBack={() => setStep('key')}
      />
    );
  const send = (): void =>
    act.run(async () => {
      const { signIn, password } = account;
      goIn(await call('firstRun', { body: { key, name: name.trim(), signIn: asSignIn(signIn), password } }));
    });
  return (
    <AccountSheet
      sheet={[3, 3]}
      account={account}
      onAccount={setAccount}
      act={act}
      send={w.begin}
      onSend={send}
      onBack={() => setStep('name')}
    />
  );
}
