import { useEffect, useState } from 'preact/hooks';
import { me, signedOut } from './me.ts';
import { openHomework } from './open-homework.ts';
import { Loaded, type ScreenProps } from './parts/loaded.tsx';
import { Renewal } from './parts/renewal.tsx';
import { Standing } from './parts/standing.tsx';
import { inStrip, place, type Screen } from './place.ts';
import { tellNewer } from './renewed.ts';
import { Practise } from './screens/practise/practise.tsx';
import type { Ground } from './start.ts';
import { Strip } from './strip.tsx';

const NAMES: Readonly<Record<Screen, string>> = {
  practise: 'Practise',
  homework: 'Homework',
  lessons: 'Lessons',
  progress: 'Progress',
  try: 'Try it',
  bench: 'Write',
  classes: 'Classes',
  account: 'Account',
  enter: 'Sign in',
  join: 'Join a class',
};

const later = {
  homework: () => import('./screens/homework/homework.tsx').then(({ Homework }) => Homework),
  lessons: () => import('./screens/lessons/lessons.tsx').then(({ Lessons }) => Lessons),
  progress: () => import('./screens/progress/progress.tsx').then(({ Progress }) => Progress),
  try: () => import('./screens/try/try-it.tsx').then(({ TryIt }) => TryIt),
  bench: () => import('./screens/bench/bench.tsx').then(({ Bench }) => Bench),
  classes: () => import('./screens/classes/classes.tsx').then(({ Classes }) => Classes),
  account: () => import('./screens/account/account.tsx').then(({ Account }) => Account),
  enter: () => import('./screens/enter/enter.tsx').then(({ Enter }) => Enter),
  join: () => import('./screens/enter/enter.tsx').then(({ Enter }) => Enter),
} as const;

/** The screens, for whoever uses the page. */
export function Shell({ ground }: { ground: Ground }) {
  const { screen, detail } = place.value;
  useEffect(() => {
    document.title = `${NAMES[screen]} · Polewise`;
    tellNewer();
  }, [screen]);
  const [caughtUp, setCaughtUp] = useState(ground.history === undefined);
  useEffect(() => {
    const go = (): void => setCaughtUp(true);
    ground.history?.then(go, go);
  }, [ground]);
  const { person } = me.value;
  const out = signedOut.value;
  useEffect(() => {
    if (!out) return undefined;
    // Once somebody has signed in again, what waited meanwhile goes.
    return () => ground.learner.sync();
  }, [out, ground]);
  return (
    <div class="shell">
      <Strip device={ground.device}>
        <nav aria-label="Screens">
          {inStrip().map((name) => (
            <a key={name} href={`#/${name}`} aria-current={name === screen ? 'page' : undefined}>
              {NAMES[name]}
            </a>
          ))}
        </nav>
        {person && (
          <a class="person" href="#/account" aria-current={screen === 'account' ? 'page' : undefined}>
            <span class="away">Account of </span>
            <span class="whose">{person.name}</span>
          </a>
        )}
      </Strip>
      <Renewal />
      <main id="main">
        {/* The practice stays as it is while another screen is looked at. */}
        <div hidden={screen !== 'practise'}>
          {openHomework.value && (
            <p class="to-do" role="status">
              <a href="#/homework">{openHomework.value}</a>
            </p>
          )}
          {caughtUp ? (
            <Practise ground={ground} />
          ) : (
            <p class="opening" role="status">
              Looking whether you have practised on another device…
            </p>
          )}
        </div>
        {screen !== 'practise' && (
          <Loaded<ScreenProps> key={screen} load={later[screen]} ground={ground} detail={detail} />
        )}
      </main>
      <footer>
        <Standing />
        <p>
          Polewise teaches reading drawings. It is no instruction to work on live equipment: isolate, lock
          off, prove dead, mind supplies from elsewhere, and follow local codes and licensed practice. All
          plants are invented.
        </p>
      </footer>
      {out && <Loaded load={again} />}
    </div>
  );
}

const again = () => import('./screens/enter/again.tsx').then(({ Again }) => Again);
