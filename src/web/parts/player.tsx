import { useEffect, useState } from 'preact/hooks';
import type { Drawn, Frame } from '../engine/messages.ts';
import { words } from '../words.ts';
import { Board } from './board.tsx';
import { Drawing } from './drawing.tsx';
import type { Touchable } from './touchable.ts';
import { unbroken } from './unbroken.ts';

/** Milliseconds for which each moment stands: long enough to read what happened. */
const BETWEEN = 1600;

interface Props {
  /** The drawing as it stands in the end. */
  readonly drawn: Drawn;
  /** The way there; the last one is the end. None yet while it is worked out. */
  readonly frames: readonly Frame[] | undefined;
  readonly about: readonly string[];
  /** The marks, shown at the end. */
  readonly marks: ReadonlyMap<string, Touchable>;
  /** What a meter on the drawing shows at the end. */
  readonly meter?: string;
}

const withPictures = (drawn: Drawn, { svgs }: Frame): Drawn => ({
  sheets: drawn.sheets.map((sheet, index) => ({ ...sheet, svg: svgs[index] ?? sheet.svg })),
});

/** A run as pictures that can be played, stepped and scrubbed. It starts at the end: the state that was asked about. */
export function Player({ drawn, frames, about, marks, meter }: Props) {
  const last = (frames?.length ?? 1) - 1;
  const [chosen, setAt] = useState<number>();
  const [playing, setPlaying] = useState(false);
  const at = Math.min(chosen ?? last, last);
  useEffect(() => {
    if (!playing) return undefined;
    if (at >= last) {
      setPlaying(false);
      return undefined;
    }
    const timer = setTimeout(() => setAt(at + 1), BETWEEN);
    return () => clearTimeout(timer);
  }, [playing, at, last]);
  const frame = frames?.[at];
  const go = (to: number): void => {
    setPlaying(false);
    setAt(Math.max(0, Math.min(last, to)));
  };
  const play = (): void => {
    if (at >= last) setAt(0);
    setPlaying(!playing);
  };
  const caption = frame?.caption ?? '';
  const { drawing, meter: face, player } = words('first').parts;
  return (
    <>
      <Board>
        <Drawing
          drawn={frame ? withPictures(drawn, frame) : drawn}
          description={at < last ? player.atThisMoment(caption) : drawing.inTheEnd}
          {...(at === last ? { about, touchable: marks } : {})}
          {...(meter === undefined ? {} : { meter: at === last ? meter : face.underWay })}
        />
      </Board>
      {frames && last > 0 && (
        <div class="transport">
          <p class="caption" aria-live="polite">
            <span class="count">
              {at + 1}/{last + 1}
            </span>{' '}
            {unbroken(caption)}
          </p>
          <div class="row">
            <button type="button" class="button" onClick={() => go(at - 1)} disabled={at === 0}>
              {player.back}
            </button>
            <button type="button" class="button" onClick={play}>
              {playing ? player.stop : player.run}
            </button>
            <button type="button" class="button" onClick={() => go(at + 1)} disabled={at === last}>
              {player.on}
            </button>
            <label class="scrub">
              <span class="away">{player.moment}</span>
              <input
                type="range"
                min={0}
                max={last}
                value={at}
                aria-valuetext={player.momentOf({ at: at + 1, of: last + 1, caption })}
                onInput={({ currentTarget }) => go(Number(currentTarget.value))}
              />
            </label>
          </div>
        </div>
      )}
    </>
  );
}
