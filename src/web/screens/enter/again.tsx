import '../../styles/enter.css';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { Button } from '../../forms/button.tsx';
import { askingAgain, leave, me, reconcileMe } from '../../me.ts';
import { words } from '../../words.ts';
import { SignInForm } from './sign-in.tsx';

/** Signing in again over whatever stands there, so that nothing typed is lost. */
export function Again() {
  const { again: w, notNow } = words('enter');
  const dialog = useRef<HTMLDialogElement>(null);
  const asked = askingAgain.value;
  useLayoutEffect(() => {
    if (!asked) {
      dialog.current?.close();
      return;
    }
    dialog.current?.showModal();
    // The name stands there already.
    dialog.current?.querySelector<HTMLElement>('input[type=password]')?.focus();
  }, [asked]);
  const { person } = me.value;
  const later = (): void => {
    askingAgain.value = false;
  };
  return (
    <dialog ref={dialog} class="entry-sheet again" aria-labelledby="again-title" onClose={later}>
      <div class="entry-title">
        <h2 id="again-title">{w.title}</h2>
      </div>
      <div class="entry-body">
        {person?.signIn && person.hasPassword ? (
          <>
            <p>{w.withPassword}</p>
            {asked && <SignInForm known={person.signIn} onDone={reconcileMe} />}
          </>
        ) : (
          <p>{w.withoutPassword}</p>
        )}
        <p class="row">
          <Button kind="plain" onPress={later}>
            {notNow}
          </Button>
          <Button kind="plain" onPress={leave}>
            {w.somebodyElse}
          </Button>
        </p>
      </div>
    </dialog>
  );
}
