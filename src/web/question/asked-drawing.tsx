import type { Asked } from '../../../shared/question.ts';
import type { Drawn } from '../engine/messages.ts';
import { Board } from '../parts/board.tsx';
import { Drawing } from '../parts/drawing.tsx';
import { SwitchRow } from '../parts/switch-row.tsx';
import type { Touchable } from '../parts/touchable.ts';
import { words } from '../words.ts';
import { type Chosen, NOTHING, voltsOf } from './answer.ts';
import { conductorsLaid, momentsAsked, touched } from './on-drawing.ts';

/** What has been typed, as the meter's face shows it. */
function faceOf(typed: string | undefined): string {
  const { meter } = words('first').parts;
  if (typed === NOTHING) return meter.nothing;
  const volts = voltsOf(typed ?? '');
  return volts === undefined ? meter.notYet : meter.volts(volts);
}

/** What the meter of a question shows; nothing where none is drawn. */
export const meterShowing = ({ form, items }: Asked, shows: (item: string) => string | undefined) =>
  form === 'reading' ? { meter: shows(items[0]?.item ?? '') ?? '' } : {};

/** Chooses the moment that is answered on the drawing, where there are several. */
function Moments({
  asked,
  moment,
  onMoment,
}: {
  asked: Asked;
  moment: number | undefined;
  onMoment: (moment: number) => void;
}) {
  const { moment: w } = words('first').practise;
  const moments = momentsAsked(asked);
  if (moments.length < 2) return null;
  return (
    <SwitchRow
      label={w.label}
      options={moments.map((after) => ({
        value: String(after),
        text: after === 0 ? w.start : w.after(String(after)),
      }))}
      chosen={String(moment)}
      onChoose={(after) => onMoment(Number(after))}
    />
  );
}

/** A question's drawing, on which it is answered. */
export function AskedDrawing({
  asked,
  title,
  drawn,
  chosen,
  touchable,
  open,
  moment,
  onMoment,
  onChange,
}: {
  asked: Asked;
  title: string | undefined;
  /** Undefined while it is being drawn. */
  drawn: Drawn | undefined;
  chosen: Chosen;
  touchable: ReadonlyMap<string, Touchable>;
  /** Whether it can still be answered. */
  open: boolean;
  moment: number | undefined;
  onMoment: (moment: number) => void;
  onChange: (states: readonly (readonly [string, string])[]) => void;
}) {
  const { drawing } = words('first').parts;
  const touch = (place: string): void => {
    onChange(touched(asked, chosen, place, moment));
    // What is being turned stays, also when its moment is complete.
    if (moment !== undefined) onMoment(moment);
  };
  return (
    <>
      <Moments asked={asked} moment={moment} onMoment={onMoment} />
      {drawn ? (
        <Board>
          <Drawing
            drawn={drawn}
            description={drawing.asked(title ?? asked.title)}
            {...(open ? { touchable } : {})}
            {...(touchable.size === 0 ? { asked: asked.items.flatMap(({ about }) => about) } : {})}
            conductors={conductorsLaid(asked, chosen)}
            onTouch={touch}
            {...meterShowing(asked, (item) => faceOf(chosen.get(item)))}
          />
        </Board>
      ) : (
        <p class="waiting" role="status">
          {drawing.underWay}
        </p>
      )}
    </>
  );
}
