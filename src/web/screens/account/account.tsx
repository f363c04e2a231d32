import '../../styles/enter.css';
import '../../styles/roll.css';
import './account.css';
import { useEffect, useState } from 'preact/hooks';
import { homeworkWaiting } from '../../homework-waiting.ts';
import { waiting } from '../../learner.ts';
import { leave, me, meetAgain, roleOf } from '../../me.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { PasswordForm } from '../enter/choose-password.tsx';
import { Sessions } from './sessions.tsx';

const ROLES = { learner: 'Learner', tutor: 'Tutor', admin: 'Administrator' } as const;

function Leave() {
  const [leaving, setLeaving] = useState(false);
  const count = waiting.value + homeworkWaiting.value;
  return (
    <section>
      <h2>Sign out here</h2>
      <p>
        {count === 0
          ? 'Everything has been sent. Sign out where others use this device too.'
          : `${count === 1 ? '1 answer has' : `${count} answers have`} not been sent yet. They stay on this device, nobody else sees them, and they are sent when you next sign in here.`}
      </p>
      <p>
        <button
          type="button"
          class="button"
          disabled={leaving}
          onClick={() => {
            setLeaving(true);
            return leave();
          }}
        >
          {leaving ? 'Signing out…' : 'Sign out'}
        </button>
      </p>
    </section>
  );
}

function Password({ person }: { person: NonNullable<typeof me.value.person> }) {
  const [said, setSaid] = useState('');
  return (
    <section>
      <h2>{person.hasPassword ? 'Another password' : 'Choose a password'}</h2>
      <p>
        {person.hasPassword
          ? 'With a new password you are signed out everywhere but here.'
          : 'You came by a link. With a password you sign in on any device.'}
      </p>
      <PasswordForm
        key={String(person.hasPassword)}
        person={person}
        send="Set the password"
        onDone={() => setSaid('The password is set.')}
      />
      <p role="status">{said}</p>
    </section>
  );
}

/** One's own account: who is signed in and where, the password, and the way out. */
export function Account(_: ScreenProps) {
  const { person } = me.value;
  useEffect(() => {
    // Classes come and go; without network it is as it was.
    meetAgain().catch(() => undefined);
  }, []);
  if (!person) return null;
  const role = roleOf(me.value);
  return (
    <div class="account">
      <h1>{person.name}</h1>
      <table class="particulars">
        <tbody>
          <tr>
            <th scope="row">Role</th>
            <td>{ROLES[role]}</td>
          </tr>
          <tr>
            <th scope="row">Signs in as</th>
            <td>{person.signIn ?? 'by a link only, so far'}</td>
          </tr>
          <tr>
            <th scope="row">Classes</th>
            <td>
              {person.classes.length === 0
                ? 'none'
                : person.classes
                    .map(({ title, manner }) => (manner === 'tutor' ? `${title} (tutor)` : title))
                    .join('; ')}
            </td>
          </tr>
          <tr>
            <th scope="row">See also</th>
            <td>
              <a class="onward" href="#/join">
                Join a class with a code
              </a>
              <br />
              <a class="onward" href="#/progress">
                {role === 'learner' ? 'What is kept about you' : 'Your own progress'}
              </a>
              {role === 'learner' && (
                <>
                  <br />
                  <a class="onward" href="#/bench">
                    Write a circuit in the notation
                  </a>
                </>
              )}
            </td>
          </tr>
        </tbody>
      </table>
      <Leave />
      <Sessions />
      <Password person={person} />
    </div>
  );
}
