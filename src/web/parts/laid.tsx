/** What is laid over a drawing: a meter with its leads, and conductors that somebody connects. */
import type { MeterDrawn, Sheet } from '../engine/messages.ts';
import { words } from '../words.ts';
import type { GoesOn, LaidOn } from './conductors.ts';
import { edgeOf, placed } from './placed.ts';

export { laidOn } from './conductors.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Of the meter's box, what each end's number takes. */
const CELL = 17;
const TIP = 4;

/** A lead hangs: from the tip down into the meter's side. */
function leadTo({ x, y }: Point, end: Point): string {
  const bow = end.x < x ? -18 : 18;
  return `M${end.x} ${end.y}Q${(end.x + x) / 2 + bow} ${(end.y + y) / 2 + 10} ${x} ${y}`;
}

function MeterShown({ meter, reading }: { meter: MeterDrawn; reading: string }) {
  const { x, y, width, height, ends } = meter;
  const [left, top] = [x - width / 2, y - height / 2];
  // The lead of the end that is further left leaves at the left.
  const turned = ends[0].x > ends[1].x;
  const [first, second] = turned ? ends.toReversed() : ends;
  const numbers = turned ? ['2', '1'] : ['1', '2'];
  return (
    <>
      <path class="lead" d={leadTo({ x: left, y }, first!)} />
      <path class="lead" d={leadTo({ x: left + width, y }, second!)} />
      {[first!, second!].map((end, at) => (
        <circle key={numbers[at]} class="tip" cx={end.x} cy={end.y} r={TIP} />
      ))}
      <rect class="case" x={left} y={top} width={width} height={height} />
      <path class="cells" d={`M${left + CELL} ${top}v${height}M${left + width - CELL} ${top}v${height}`} />
      <text class="number" x={left + CELL / 2} y={y}>
        {numbers[0]}
      </text>
      <text class="number" x={left + width - CELL / 2} y={y}>
        {numbers[1]}
      </text>
      <text x={x} y={y}>
        {reading}
      </text>
    </>
  );
}

/** How far a conductor that goes on elsewhere is drawn from its terminal, and its arrow, in the drawing's pixels. */
const STUB = 15;
const ARROW = [3.5, 5] as const;

function stub({ x, y, up }: GoesOn): string {
  const end = up ? y - STUB : y + STUB;
  const back = up ? end + ARROW[1] : end - ARROW[1];
  return `M${x} ${y}V${end}M${x - ARROW[0]} ${back}L${x} ${end}L${x + ARROW[0]} ${back}`;
}

/** Over a drawing's picture; it takes no touch. */
export function Laid({
  sheet,
  reading,
  laid: { joined, ends },
  isTouched,
}: {
  sheet: Sheet;
  reading: string | undefined;
  laid: LaidOn;
  /** Whether a terminal is one to touch, which says its sign itself. */
  isTouched: (item: string) => boolean;
}) {
  if (!sheet.meter && joined.length === 0 && ends.length === 0) return null;
  return (
    <>
      <svg class="laid" viewBox={`0 0 ${sheet.width} ${sheet.height}`} aria-hidden="true">
        {joined.map(({ from, to }) => (
          <path
            key={`${from.x} ${from.y} ${to.x} ${to.y}`}
            class="conductor"
            d={`M${from.x} ${from.y}L${to.x} ${to.y}`}
          />
        ))}
        {ends.map((end) => (
          <path key={`${end.x} ${end.y}`} class="conductor on" d={stub(end)} />
        ))}
        {sheet.meter && (
          <MeterShown meter={sheet.meter} reading={reading ?? words('first').parts.meter.notYet} />
        )}
      </svg>
      {ends
        .filter(({ spot }) => !isTouched(spot.item))
        .map(({ spot, sign }, index) => (
          <span
            key={`${spot.item} ${index}`}
            class={`spot terminal shown ${edgeOf(spot)}`}
            data-state={sign}
            style={placed(spot, sheet)}
            aria-hidden="true"
          >
            <span class="tag">{sign}</span>
          </span>
        ))}
    </>
  );
}
