import { useEffect, useState } from 'preact/hooks';
import type { Frame } from '../engine/messages.ts';
import { Drawing } from './drawing.tsx';

const BETWEEN = 1400;

/** A run as pictures that can be played, stepped and drawn along. It starts at the end: the state that was asked about. */
export function Player({ frames, about }: { frames: readonly Frame[]; about?: readonly string[] }) {
  const last = frames.length - 1;
  const [at, setAt] = useState(last);
  const [playing, setPlaying] = useState(false);
  useEffect(() => {
    if (!playing) return undefined;
    if (at >= last) {
      setPlaying(false);
      return undefined;
    }
    const timer = setTimeout(() => setAt(at + 1), BETWEEN);
    return () => clearTimeout(timer);
  }, [playing, at, last]);
  const frame = frames[Math.min(at, last)];
  if (!frame) return null;
  const go = (to: number): void => {
    setPlaying(false);
    setAt(Math.max(0, Math.min(last, to)));
  };
  const play = (): void => {
    if (at >= last) setAt(0);
    setPlaying(!playing);
  };
  return (
    <div class="player">
      <Drawing
        drawn={frame.drawn}
        description={`The circuit, ${frame.caption}`}
        {...(about && at === last ? { about } : {})}
      />
      {last > 0 && (
        <div class="transport">
          <p class="caption" aria-live="polite">
            {frame.caption}
          </p>
          <label>
            <span class="away">Step of the run</span>
            <input
              type="range"
              min={0}
              max={last}
              value={at}
              aria-valuetext={frame.caption}
              onInput={({ currentTarget }) => go(Number(currentTarget.value))}
            />
          </label>
          <div class="row">
            <button type="button" class="button" onClick={() => go(at - 1)} disabled={at === 0}>
              Back
            </button>
            <button type="button" class="button" onClick={play}>
              {playing ? 'Stop' : 'Run it'}
            </button>
            <button type="button" class="button" onClick={() => go(at + 1)} disabled={at === last}>
              On
            </button>
          </div>
        </div>
      )}
    </div>
  );
}
