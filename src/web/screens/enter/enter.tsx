import '../../styles/enter.css';
import { useEffect } from 'preact/hooks';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { PasswordForm } from '../../forms/password-form.tsx';
import { me } from '../../me.ts';
import { route } from '../../route.ts';
import { words } from '../../words.ts';
import { FirstRun } from './first-run.tsx';
import { goIn } from './go-in.ts';
import { Join } from './join.tsx';
import { ByLink } from './link.tsx';
import { SignInForm } from './sign-in.tsx';

/** Somebody is in by a link: now a password, so that no other link is needed. */
function ChoosePassword() {
  const { person } = me.value;
  const on = (): void => {
    location.hash = '#/';
  };
  if (!person) return <SignIn />;
  const { choose: w, notNow, setPassword } = words('enter');
  return (
    <EntrySheet title={w.title(person.name)} focusTitle>
      <p>{w.why}</p>
      <PasswordForm person={person} send={setPassword} first onDone={on} />
      <div class="aside">
        <p>{w.without}</p>
        <p class="row">
          <Button onPress={on}>{notNow}</Button>
        </p>
      </div>
    </EntrySheet>
  );
}

function SignIn() {
  const { signIn: w } = words('enter');
  return (
    <EntrySheet title={w.title}>
      <SignInForm onDone={(now) => goIn(now)} />
      <div class="aside">
        <p>{w.newHere}</p>
        <p>
          <a class="button" href="#/join">
            {w.join}
          </a>
        </p>
        <p>{w.otherWays}</p>
      </div>
    </EntrySheet>
  );
}

/** The way in: signing in, a class joined by its code, a link that was handed over, and the very first visit. */
export function Enter({ detail }: { detail: string | undefined }) {
  const { person, firstRun } = me.value;
  const { screen } = route.value;
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
