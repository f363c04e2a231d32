import '../../styles/enter.css';
import '../../styles/roll.css';
import './account.css';
import { useEffect, useState } from 'preact/hooks';
import { PasswordForm } from '../../forms/password-form.tsx';
import { homeworkWaiting } from '../../homework-waiting.ts';
import { waiting } from '../../learner.ts';
import { leave, me, meetAgain, roleOf } from '../../me.ts';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { words } from '../../words.ts';
import { Sessions } from './sessions.tsx';

function Leave() {
  const w = words('account').leave;
  const [leaving, setLeaving] = useState(false);
  const count = waiting.value + homeworkWaiting.value;
  return (
    <section>
      <h2>{w.title}</h2>
      <p>{count === 0 ? w.allSent : w.notSent(count)}</p>
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
          {leaving ? w.signingOut : w.signOut}
        </button>
      </p>
    </section>
  );
}

function Password({ person }: { person: NonNullable<typeof me.value.person> }) {
  const w = words('account').password;
  const [said, setSaid] = useState('');
  return (
    <section>
      <h2>{person.hasPassword ? w.another : w.choose}</h2>
      <p>{person.hasPassword ? w.anotherNote : w.chooseNote}</p>
      <PasswordForm
        key={String(person.hasPassword)}
        person={person}
        send={w.set}
        onDone={() => setSaid(w.isSet)}
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
  const w = words('account').person;
  return (
    <div class="account">
      <h1>{person.name}</h1>
      <table class="particulars">
        <tbody>
          <tr>
            <th scope="row">{w.role}</th>
            <td>{w.roles[role]}</td>
          </tr>
          <tr>
            <th scope="row">{w.signsInAs}</th>
            <td>{person.signIn ?? w.byLinkOnly}</td>
          </tr>
          <tr>
            <th scope="row">{w.classes}</th>
            <td>
              {person.classes.length === 0
                ? w.noClass
                : w.classesOf(
                    person.classes.map(({ title, manner }) =>
                      manner === 'tutor' ? w.asTutor(title) : title,
                    ),
                  )}
            </td>
          </tr>
          <tr>
            <th scope="row">{w.seeAlso}</th>
            <td>
              <a class="onward" href="#/join">
                {w.join}
              </a>
              <br />
              <a class="onward" href="#/progress">
                {role === 'learner' ? w.keptAboutYou : w.ownProgress}
              </a>
              {role === 'learner' && (
                <>
                  <br />
                  <a class="onward" href="#/bench">
                    {w.write}
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
