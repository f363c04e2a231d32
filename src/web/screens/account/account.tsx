import '../../styles/enter.css';
import '../../styles/roll.css';
import './account.css';
import { Fragment } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { Button } from '../../forms/button.tsx';
import { PasswordForm } from '../../forms/password-form.tsx';
import { homeworkWaiting } from '../../homework-waiting.ts';
import { waiting } from '../../learner.ts';
import { leave, me, refreshMe, roleOf } from '../../me.ts';
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
        <Button
          busy={leaving}
          meanwhile={w.signingOut}
          onPress={() => {
            setLeaving(true);
            return leave();
          }}
        >
          {w.signOut}
        </Button>
      </p>
    </section>
  );
}

function Password({ person }: { person: Myself }) {
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

type Myself = NonNullable<typeof me.value.person>;

/** Where else somebody may want to go from here. */
function SeeAlso() {
  const w = words('account').person;
  const learns = roleOf(me.value) === 'learner';
  const links = [
    ['#/join', w.join],
    ['#/progress', learns ? w.keptAboutYou : w.ownProgress],
    ...(learns ? [['#/bench', w.write]] : []),
  ] as const;
  return (
    <>
      {links.map(([address, text], at) => (
        <Fragment key={address}>
          {at > 0 && <br />}
          <a class="onward" href={address}>
            {text}
          </a>
        </Fragment>
      ))}
    </>
  );
}

function Particulars({ person: { signIn, classes } }: { person: Myself }) {
  const w = words('account').person;
  const titles = classes.map(({ title, manner }) => (manner === 'tutor' ? w.asTutor(title) : title));
  const rows = [
    [w.role, w.roles[roleOf(me.value)]],
    [w.signsInAs, signIn ?? w.byLinkOnly],
    [w.classes, titles.length === 0 ? w.noClass : w.classesOf(titles)],
    [w.seeAlso, <SeeAlso key="links" />],
  ] as const;
  return (
    <table class="particulars">
      <tbody>
        {rows.map(([what, how]) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{how}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** One's own account: who is signed in and where, the password, and the way out. */
export function Account(_: ScreenProps) {
  const { person } = me.value;
  useEffect(() => {
    // Classes come and go; without network it is as it was.
    refreshMe().catch(() => undefined);
  }, []);
  if (!person) return null;
  return (
    <div class="account">
      <h1>{person.name}</h1>
      <Particulars person={person} />
      <Leave />
      <Sessions />
      <Password person={person} />
    </div>
  );
}
