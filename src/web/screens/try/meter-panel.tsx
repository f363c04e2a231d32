import type { Live } from '../../engine/messages.ts';
import { words } from '../../words.ts';

/** The two points of a meter; empty where its lead hangs free. */
export type Points = readonly [string, string];

/** The leads after a terminal has been touched: a free lead goes there, else the first; one that is there comes off. */
export function touched([first, second]: Points, terminal: string): Points {
  if (first === terminal) return ['', second];
  if (second === terminal) return [first, ''];
  return first && !second ? [first, terminal] : [terminal, second];
}

/** What the meter's face says. */
export function shown(meter: Live['meter']): string | undefined {
  const { meter: face } = words('first').parts;
  return meter && (meter.volts === null ? face.nothing : face.volts(Number(meter.volts.toPrecision(4))));
}

/** The reading in a sentence. */
export function reading([first, second]: Points, meter: Live['meter']): string {
  const { meter: w } = words('try');
  if (!meter) return first || second ? w.oneHangsFree : w.bothHangFree;
  return meter.volts === null
    ? w.showsNothing({ first, second })
    : w.shows({ first, second, shown: shown(meter)! });
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
        <option value="">{words('try').meter.hangsFree}</option>
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
  const { meter: w } = words('try');
  return (
    <section>
      <h2>{w.title}</h2>
      <p class="told">{w.note}</p>
      <div class="row">
        <Lead
          name={w.first}
          at={points[0]}
          terminals={terminals}
          onMove={(terminal) => onMove([terminal, points[1]])}
        />
        <Lead
          name={w.second}
          at={points[1]}
          terminals={terminals}
          onMove={(terminal) => onMove([points[0], terminal])}
        />
      </div>
      <p role="status" class="reading">
        {reading(points, meter)}
      </p>
      <p class="caution">{w.caution}</p>
    </section>
  );
}
