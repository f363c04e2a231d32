import { useEffect, useState } from 'preact/hooks';
import { Loaded } from './parts/loaded.tsx';
import { route } from './route.ts';
import { Shell } from './shell.tsx';
import type { Opened } from './start.ts';
import { Strip } from './strip.tsx';
import { spoken, words } from './words.ts';

const entrance = spoken(['enter'], () => import('./screens/enter/enter.tsx').then(({ Enter }) => Enter));

/** The page from the first moment: what it is waiting for, what went wrong, the way in, or the screens. */
export function App({ starting }: { starting: Promise<Opened> }) {
  const { frame } = words('first');
  const [opened, setOpened] = useState<Opened>();
  const [failure, setFailure] = useState<string>();
  useEffect(() => {
    starting.then(setOpened, (error: unknown) =>
      setFailure(error instanceof Error ? error.message : String(error)),
    );
  }, [starting]);
  switch (opened?.kind) {
    case 'ready':
      return <Shell ground={opened.ground} />;
    case 'nobody':
      return (
        <div class="shell">
          <Strip device={opened.device} />
          <main id="main">
            <Loaded load={entrance} detail={route.value.detail} />
          </main>
        </div>
      );
  }
  return (
    <div class="opening" role="status">
      <h1>Polewise</h1>
      {failure ? (
        <>
          <p>{failure}</p>
          <button type="button" class="button" onClick={() => location.reload()}>
            {frame.tryAgain}
          </button>
        </>
      ) : (
        <p>{frame.drawingFirst}</p>
      )}
    </div>
  );
}
