import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { asSignIn, offeredSignIn } from '../../forms/typed.ts';
import { words } from '../../words.ts';
import { type Account, AccountSheet } from './account-sheet.tsx';
import { goIn } from './go-in.ts';
import { NameSheet } from './name-sheet.tsx';

/** The very first visit: whoever can read what the server prints becomes its administrator. */
export function FirstRun() {
  const { firstRun: w, next } = words('enter');
  const [step, setStep] = useState<'key' | 'name' | 'account'>('key');
  const [key, setKey] = useState('');
  const [name, setName] = useState('');
  const [account, setAccount] = useState<Account>({ signIn: '', password: '' });
  const [looked, setLooked] = useState(false);
  const act = useAct();
  const refused = act.code === 'first-run-refused' ? act.failure : undefined;

  if (step === 'key' || refused)
    return (
      <EntrySheet title={w.title} sheet={[1, 3]}>
        <p>{w.what}</p>
        <Form
          onSend={() => {
            setLooked(true);
            if (key.trim() === '') return;
            act.clear();
            setStep(name === '' ? 'name' : 'account');
          }}
        >
          <Field
            label={w.key}
            name="key"
            kind="code"
            autocomplete="off"
            first
            value={key}
            note={w.keyNote}
            problem={refused ?? (looked && key.trim() === '' ? w.noKey : undefined)}
            onValue={(typed) => {
              act.clear();
              setStep('key');
              setKey(typed);
            }}
          />
          <p>
            <button type="submit" class="button main">
              {next}
            </button>
          </p>
        </Form>
      </EntrySheet>
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
