import { useEffect, useState } from 'preact/hooks';
import { connection, waiting } from './learner.ts';
import { Loaded } from './parts/loaded.tsx';
import { place, SCREENS, type Screen } from './place.ts';
import { Practise } from './screens/practise/practise.tsx';
import type { Ground } from './start.ts';
import { theme, turnTheme } from './theme.ts';

const NAMES: Readonly<Record<Screen, string>> = {
  practise: 'Practise',
  lessons: 'Lessons',
  progress: 'Progress',
  try: 'Try it',
  bench: 'Write',
};

const later = {
  lessons: () => import('./screens/lessons/lessons.tsx').then(({ Lessons }) => Lessons),
  progress: () => import('./screens/progress/progress.tsx').then(({ Progress }) => Progress),
  try: () => import('./screens/try/try-it.tsx').then(({ TryIt }) => TryIt),
  bench: () => import('./screens/bench/bench.tsx').then(({ Bench }) => Bench),
} as const;

function Standing() {
  if (waiting.value === 0)
    return <p class="standing">{connection.value === 'offline' ? 'No network. Everything works.' : ''}</p>;
  const count = waiting.value === 1 ? '1 answer waits' : `${waiting.value} answers wait`;
  return (
    <p class="standing">
      {connection.value === 'offline' ? `${count} for the network.` : `${count} to be sent.`}
    </p>
  );
}

function Shell({ ground }: { ground: Ground }) {
  const { screen } = place.value;
  useEffect(() => {
    document.title = `${NAMES[screen]} · Polewise`;
  }, [screen]);
  return (
    <div class="shell">
      <header class="strip">
        <p class="name">Polewise</p>
        <nav aria-label="Screens">
          {SCREENS.map((name) => (
            <a key={name} href={`#/${name}`} aria-current={name === screen ? 'page' : undefined}>
              {NAMES[name]}
            </a>
          ))}
        </nav>
        <button type="button" class="button plain theme" onClick={() => turnTheme(ground.local)}>
          {theme.value === 'dark' ? 'Light' : 'Dark'}
        </button>
      </header>
      <main id="main">
        {/* The practice stays as it is while another screen is looked at. */}
        <div hidden={screen !== 'practise'}>
          <Practise ground={ground} />
        </div>
        {screen !== 'practise' && (
          <Loaded key={screen} load={later[screen]} ground={ground} detail={place.value.detail} />
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
    </div>
  );
}

/** The page from the first moment: what it is waiting for, what went wrong, or the screens. */
export function App({ starting }: { starting: Promise<Ground> }) {
  const [ground, setGround] = useState<Ground>();
  const [failure, setFailure] = useState<string>();
  useEffect(() => {
    starting.then(setGround, (error: unknown) =>
      setFailure(error instanceof Error ? error.message : String(error)),
    );
  }, [starting]);
  if (ground) return <Shell ground={ground} />;
  return (
    <div class="opening" role="status">
      <h1>Polewise</h1>
      {failure ? (
        <>
          <p>{failure}</p>
          <button type="button" class="button" onClick={() => location.reload()}>
            Try again
          </button>
        </>
      ) : (
        <p>Drawing the first circuit…</p>
      )}
    </div>
  );
}
