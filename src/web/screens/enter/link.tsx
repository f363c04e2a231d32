import { call } from '../../api.ts';
import { me } from '../../me.ts';
import { useAct } from '../../parts/act.ts';
import { goIn } from './go-in.ts';
import { Failure, Sheet } from './sheet.tsx';

/** Coming in by a link that was handed over. It works once, so it is used by a button and not by being opened. */
export function ByLink({ token }: { token: string }) {
  const act = useAct();
  const { person } = me.value;
  const use = (): void =>
    act.run(async () => goIn(await call('signInWithLink', { body: { token } }), '#/enter/password'));
  return (
    <Sheet title="Come in by your link" focusTitle>
      <p>Somebody has handed you a link of your own. It works once, for seven days.</p>
      {person && (
        <p>
          {person.name} is signed in here. Your link signs {person.name} out on this device; what{' '}
          {person.name} has practised stays.
        </p>
      )}
      <Failure words={act.failure} />
      <p class="row">
        <button type="button" class="button main" disabled={act.busy} onClick={use}>
          {act.busy ? 'One moment…' : 'Come in'}
        </button>
        <a href="#/enter">{person ? 'Leave it' : 'Sign in with a password instead'}</a>
      </p>
    </Sheet>
  );
}
