import type { FunctionComponent } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Ground } from '../start.ts';
import { words } from '../words.ts';
import { asLongAsWanted } from './as-long-as-wanted.ts';

/** What every screen is given. */
export interface ScreenProps {
  readonly ground: Ground;
  readonly detail: string | undefined;
}

/** A part of the page whose script is fetched when it is first wanted. */
export function Loaded<P extends object>({
  load,
  ...props
}: P & { load: () => Promise<FunctionComponent<P>> }) {
  const [Screen, setScreen] = useState<{ of: FunctionComponent<P> }>();
  const [failed, setFailed] = useState(false);
  useEffect(
    () =>
      asLongAsWanted(
        load(),
        (of) => setScreen({ of }),
        () => setFailed(true),
      ),
    [load],
  );
  const { frame } = words('first');
  if (Screen) return <Screen.of {...(props as unknown as P)} />;
  if (!failed) return <p role="status">{frame.loading}</p>;
  return (
    <div role="status">
      {/* Or the page was renewed meanwhile, and the script goes by another name now. */}
      <p>{frame.partMissing}</p>
      <button type="button" class="button" onClick={() => location.reload()}>
        {frame.tryAgain}
      </button>
    </div>
  );
}
