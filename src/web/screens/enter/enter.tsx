import '../../styles/enter.css';
import { useEffect } from 'preact/hooks';
import { me } from '../../me.ts';
import { place } from '../../place.ts';
import { PasswordForm } from './choose-password.tsx';
import { FirstRun } from './first-run.tsx';
import { goIn } from './go-in.ts';
import { Join } from './join.tsx';
import { ByLink } from './link.tsx';
import { Sheet } from './sheet.tsx';
import { SignInForm } from './sign-in.tsx';

/** Somebody is in by a link: now a password, so that no other link is needed. */
function ChoosePassword() {
  const { person } = me.value;
  const on = (): void => {
    location.hash = '#/';
  };
  if (!person) return <SignIn />;
  return (
    <Sheet title={`Good day, ${person.name}`} focusTitle>
      <p>Choose a password, and from now on you sign in with it on any device.</p>
      <PasswordForm person={person} send="Set the password" first onDone={on} />
      <div class="aside">
        <p>
          Without one you can go on here; for another device, or once you are signed out, you need a new link.
        </p>
        <p class="row">
          <button type="button" class="button" onClick={on}>
            Not now
          </button>
        </p>
      </div>
    </Sheet>
  );
}

function SignIn() {
  return (
    <Sheet title="Sign in">
      <SignInForm onDone={(now) => goIn(now)} />
      <div class="aside">
        <p>New here, with a slip from your tutor:</p>
        <p>
          <a class="button" href="#/join">
            Join a class with a code
          </a>
        </p>
        <p>With a link of your own, open that link. Forgotten the password? Ask your tutor for a link.</p>
      </div>
    </Sheet>
  );
}

/** The way in: signing in, a class joined by its code, a link that was handed over, and the very first visit. */
export function Enter({ detail }: { detail: string | undefined }) {
  const { person, firstRun } = me.value;
  const { screen } = place.value;
  const idle = person !== null && screen === 'enter' && detail === undefined;
  useEffect(() => {
    if (idle) location.replace('#/account');
  }, [idle]);
  if (firstRun) return <FirstRun />;
  if (screen === 'join') return <Join key={detail} code={detail} />;
  if (screen === 'enter' && detail === 'password') return <ChoosePassword />;
  if (screen === 'enter' && detail) return <ByLink key={detail} token={detail} />;
  return idle ? null : <SignIn />;
}
