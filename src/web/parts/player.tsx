import { useEffect, useState } from 'preact/hooks';
import type { Drawn, Frame } from '../engine/messages.ts';
import { Button } from '../forms/button.tsx';
import { unbroken, words } from '../words.ts';
import { Board } from './board.tsx';
import { Drawing } from './drawing.tsx';
import type { Touchable } from './touchable.ts';

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

/** Which moment stands there; it goes on by itself while the run is played. */
function useMoments(last: number) {
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
  return {
    at,
    playing,
    go(to: number): void {
      setPlaying(false);
      setAt(Math.max(0, Math.min(last, to)));
    },
    play(): void {
      if (at >= last) setAt(0);
      setPlaying(!playing);
    },
  };
}

/** What happens at the moment, and the ways to the others. */
function Transport({
  moments: { at, playing, go, play },
  last,
  caption,
}: {
  moments: ReturnType<typeof useMoments>;
  last: number;
  caption: string;
}) {
  const { player } = words('first').parts;
  return (
    <div class="transport">
      <p class="caption" aria-live="polite">
        <span class="count">
          {at + 1}/{last + 1}
        </span>{' '}
        {unbroken(caption)}
      </p>
      <div class="row">
        <Button onPress={() => go(at - 1)} disabled={at === 0}>
          {player.back}
        </Button>
        <Button onPress={play}>{playing ? player.stop : player.run}</Button>
        <Button onPress={() => go(at + 1)} disabled={at === last}>
          {player.on}
        </Button>
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
  );
}

/** A run as pictures that can be played, stepped and scrubbed. It starts at the end: the state that was asked about. */
export function Player({ drawn, frames, about, marks, meter }: Props) {
  const last = (frames?.length ?? 1) - 1;
  const moments = useMoments(last);
  const { at } = moments;
  const frame = frames?.[at];
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
      {frames && last > 0 && <Transport moments={moments} last={last} caption={caption} />}
    </>
  );
}
