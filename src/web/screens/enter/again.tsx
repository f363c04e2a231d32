import '../../styles/enter.css';
import { useLayoutEffect, useRef } from 'preact/hooks';
import { askingAgain, leave, me, meet } from '../../me.ts';
import { SignInForm } from './sign-in.tsx';

/** Signing in again over whatever stands there, so that nothing typed is lost. */
export function Again() {
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
        <h2 id="again-title">Sign in again</h2>
      </div>
      <div class="entry-body">
        {person?.signIn && person.hasPassword ? (
          <>
            <p>You are no longer signed in here. What you have done stays on this device until it is sent.</p>
            {asked && <SignInForm known={person.signIn} onDone={meet} />}
          </>
        ) : (
          <p>
            You are no longer signed in here, and have no password. Ask your tutor for a link and open it on
            this device: what you have done here stays until then, and is sent.
          </p>
        )}
        <p class="row">
          <button type="button" class="button plain" onClick={later}>
            Not now
          </button>
          <button type="button" class="button plain" onClick={leave}>
            I am somebody else
          </button>
        </p>
      </div>
    </dialog>
  );
}
