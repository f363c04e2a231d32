import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { me } from '../../me.ts';
import { words } from '../../words.ts';
import { goIn } from './go-in.ts';

/** Coming in by a link that was handed over. It works once, so it is used by a button and not by being opened. */
export function ByLink({ token }: { token: string }) {
  const { link: w, oneMoment } = words('enter');
  const act = useAct();
  const { person } = me.value;
  const use = (): void =>
    act.run(async () => goIn(await call('signInWithLink', { body: { token } }), '#/enter/password'));
  return (
    <EntrySheet title={w.title} focusTitle>
      <p>{w.what}</p>
      {person && <p>{w.signsOut(person.name)}</p>}
      <Failure words={act.failure} />
      <p class="row">
        <Button kind="main" busy={act.busy} meanwhile={oneMoment} onPress={use}>
          {w.comeIn}
        </Button>
        <a href="#/enter">{person ? w.leaveIt : w.withPassword}</a>
      </p>
    </EntrySheet>
  );
}
