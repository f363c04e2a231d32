import { useEffect, useState } from 'preact/hooks';
import { me, signedOut } from './me.ts';
import { openHomework } from './open-homework.ts';
import { Loaded, type ScreenProps } from './parts/loaded.tsx';
import { Renewal } from './parts/renewal.tsx';
import { SyncStatus } from './parts/sync-status.tsx';
import { tellNewer } from './renewed.ts';
import { inStrip, route, type Screen } from './route.ts';
import { Practise } from './screens/practise/practise.tsx';
import type { Ground } from './start.ts';
import { Strip } from './strip.tsx';
import { set, spoken, words } from './words.ts';

const later = {
  homework: spoken(['homework'], () =>
    import('./screens/homework/homework.tsx').then(({ Homework }) => Homework),
  ),
  lessons: spoken(['lessons'], () => import('./screens/lessons/lessons.tsx').then(({ Lessons }) => Lessons)),
  progress: spoken(['progress', 'ideas'], () =>
    import('./screens/progress/progress.tsx').then(({ Progress }) => Progress),
  ),
  try: spoken(['try'], () => import('./screens/try/try-it.tsx').then(({ TryIt }) => TryIt)),
  bench: spoken(['bench'], () => import('./screens/bench/bench.tsx').then(({ Bench }) => Bench)),
  classes: spoken(['classes', 'enter'], () =>
    import('./screens/classes/classes.tsx').then(({ Classes }) => Classes),
  ),
  account: spoken(['account', 'enter'], () =>
    import('./screens/account/account.tsx').then(({ Account }) => Account),
  ),
  enter: spoken(['enter'], () => import('./screens/enter/enter.tsx').then(({ Enter }) => Enter)),
  join: spoken(['enter'], () => import('./screens/enter/enter.tsx').then(({ Enter }) => Enter)),
} as const;

/** The other screens, and whose page it is. */
function Navigation() {
  const { frame } = words('first');
  const here = (screen: Screen) => (screen === route.value.screen ? 'page' : undefined);
  const { person } = me.value;
  return (
    <>
      <nav aria-label={frame.screensList}>
        {inStrip().map((name) => (
          <a key={name} href={`#/${name}`} aria-current={here(name)}>
            {frame.screens[name]}
          </a>
        ))}
      </nav>
      {person && (
        <a class="person" href="#/account" aria-current={here('account')}>
          {set(frame.accountOf, {
            away: (text) => <span class="away">{text}</span>,
            person: <span class="whose">{person.name}</span>,
          })}
        </a>
      )}
    </>
  );
}

/** The screens, for whoever uses the page. */
export function Shell({ ground }: { ground: Ground }) {
  const { frame } = words('first');
  const { screen, detail } = route.value;
  useEffect(() => {
    document.title = frame.titleOf(frame.screens[screen]);
    tellNewer();
  }, [screen, frame]);
  const [caughtUp, setCaughtUp] = useState(ground.history === undefined);
  useEffect(() => {
    const go = (): void => setCaughtUp(true);
    ground.history?.then(go, go);
  }, [ground]);
  const out = signedOut.value;
  useEffect(() => {
    if (!out) return undefined;
    // Once somebody has signed in again, what waited meanwhile goes.
    return () => ground.learner.sync();
  }, [out, ground]);
  return (
    <div class="shell">
      <Strip device={ground.device}>
        <Navigation />
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
              {frame.lookingElsewhere}
            </p>
          )}
        </div>
        {screen !== 'practise' && (
          <Loaded<ScreenProps> key={screen} load={later[screen]} ground={ground} detail={detail} />
        )}
      </main>
      <footer>
        <SyncStatus />
        <p>{frame.caution}</p>
      </footer>
      {out && <Loaded load={again} />}
    </div>
  );
}

const again = spoken(['enter'], () => import('./screens/enter/again.tsx').then(({ Again }) => Again));
