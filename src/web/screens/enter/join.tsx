import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { asSignIn, offeredSignIn } from '../../forms/typed.ts';
import { me } from '../../me.ts';
import { words } from '../../words.ts';
import { type Account, AccountSheet } from './account-sheet.tsx';
import { CodeSheet } from './code-sheet.tsx';
import { goIn } from './go-in.ts';
import { NameSheet } from './name-sheet.tsx';

interface Found {
  readonly code: string;
  readonly title: string;
}

/** From the code on a slip into the class, for somebody who isn't known here yet. */
function JoinAnew({ found, onBack }: { found: Found; onBack: () => void }) {
  const w = words('enter');
  const [step, setStep] = useState<'name' | 'account'>('name');
  const [name, setName] = useState('');
  const [account, setAccount] = useState<Account>({ signIn: '', password: '' });
  const act = useAct();
  if (step === 'name')
    return (
      <NameSheet
        sheet={[2, 3]}
        note={w.join.nameNote(found.title)}
        value={name}
        onValue={setName}
        onNext={() => {
          if (account.signIn === '') setAccount({ ...account, signIn: offeredSignIn(name) });
          setStep('account');
        }}
        onBack={onBack}
      />
    );
  const join = (): void =>
    act.run(async () => {
      const { signIn, password } = account;
      const body = { code: found.code, name: name.trim(), signIn: asSignIn(signIn), password };
      goIn(await call('join', { body }));
    });
  return (
    <AccountSheet
      sheet={[3, 3]}
      account={account}
      onAccount={setAccount}
      act={act}
      send={w.joinTheClass}
      onSend={join}
      onBack={() => setStep('name')}
    />
  );
}

/** One class more for somebody who is signed in. */
function JoinAlso({ found, name, onBack }: { found: Found; name: string; onBack: () => void }) {
  const w = words('enter');
  const act = useAct();
  const join = (): void => act.run(async () => goIn(await call('joinClass', { body: { code: found.code } })));
  return (
    <EntrySheet title={w.join.alsoTitle(found.title)} sheet={[2, 2]} focusTitle>
      <p>{w.join.also(name)}</p>
      <Failure words={act.failure} />
      <p class="row">
        <Button kind="main" busy={act.busy} onPress={join}>
          {w.joinTheClass}
        </Button>
        <Button kind="plain" onPress={onBack}>
          {w.back}
        </Button>
      </p>
    </EntrySheet>
  );
}

/** Joining a class by the code on a slip, typed or from the slip's address. */
export function Join({ code }: { code: string | undefined }) {
  const [found, setFound] = useState<Found>();
  const { person } = me.value;
  if (!found) return <CodeSheet code={code ?? ''} of={person ? 2 : 3} onFound={setFound} />;
  const back = (): void => setFound(undefined);
  return person ? (
    <JoinAlso found={found} name={person.name} onBack={back} />
  ) : (
    <JoinAnew found={found} onBack={back} />
  );
}
