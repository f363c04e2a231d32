import type { Live } from '../../engine/messages.ts';

/** The two points of a meter; empty where its lead hangs free. */
export type Points = readonly [string, string];

/** The leads after a terminal has been touched: a free lead goes there, else the first; one that is there comes off. */
export function touched([first, second]: Points, terminal: string): Points {
  if (first === terminal) return ['', second];
  if (second === terminal) return [first, ''];
  return first && !second ? [first, terminal] : [terminal, second];
}

/** What the meter's face says. */
export const shown = (meter: Live['meter']): string | undefined =>
  meter && (meter.volts === null ? 'nothing' : `${Number(meter.volts.toPrecision(4))} V`);

/** The reading in a sentence. */
export function reading([first, second]: Points, meter: Live['meter']): string {
  if (!meter) return first || second ? 'The other lead hangs free.' : 'Both leads hang free.';
  return meter.volts === null
    ? `${first} against ${second}: it shows nothing. The two points have no common reference: they are on isolated supplies, or one hangs free.`
    : `${first} against ${second}: ${shown(meter)}.`;
}

function Lead({
  name,
  at,
  terminals,
  onMove,
}: {
  name: string;
  at: string;
  terminals: readonly string[];
  onMove: (terminal: string) => void;
}) {
  return (
    <label class="lead-at">
      {name}
      <select value={at} onChange={({ currentTarget: { value } }) => onMove(value)}>
        <option value="">hangs free</option>
        {terminals.map((terminal) => (
          <option key={terminal}>{terminal}</option>
        ))}
      </select>
    </label>
  );
}

/** The meter, by ordinary controls; the same as by touching two terminals of the drawing. */
export function MeterPanel({
  terminals,
  points,
  meter,
  onMove,
}: {
  terminals: readonly string[];
  points: Points;
  meter: Live['meter'];
  onMove: (points: Points) => void;
}) {
  return (
    <section>
      <h2>Meter</h2>
      <p class="told">Touch two terminals on the drawing, or choose them here. Lead 2 is the reference.</p>
      <div class="row">
        <Lead
          name="Lead 1"
          at={points[0]}
          terminals={terminals}
          onMove={(terminal) => onMove([terminal, points[1]])}
        />
        <Lead
          name="Lead 2"
          at={points[1]}
          terminals={terminals}
          onMove={(terminal) => onMove([points[0], terminal])}
        />
      </div>
      <p role="status" class="reading">
        {reading(points, meter)}
      </p>
      <p class="caution">
        On a drawing a meter is safe. On a real panel: isolate, lock off, prove dead with a proved tester, and
        prove the tester again; mind supplies from elsewhere that stay live. Local codes and licensed practice
        decide who may measure live, and how.
      </p>
    </section>
  );
}
