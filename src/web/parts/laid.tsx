/** What is laid over a drawing: a meter with its leads, and conductors that somebody connects. */
import type { MeterDrawn, Sheet } from '../engine/messages.ts';

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

/** The places of two terminals that are nearest to each other, in the drawing's pixels. */
function between(
  { spots, width, height }: Sheet,
  [from, to]: readonly [string, string],
): [Point, Point] | undefined {
  const placesOf = (terminal: string): Point[] =>
    spots
      .filter(({ item, kind }) => kind === 'terminal' && item === terminal)
      .map((spot) => ({ x: (spot.x + spot.width / 2) * width, y: (spot.y + spot.height / 2) * height }));
  const pairs = placesOf(from).flatMap((one) => placesOf(to).map((other): [Point, Point] => [one, other]));
  const length = ([one, other]: [Point, Point]): number => Math.hypot(one.x - other.x, one.y - other.y);
  return pairs.toSorted((one, other) => length(one) - length(other))[0];
}

/** In the drawing's own measure, over its picture; it takes no touch. */
export function Laid({
  sheet,
  reading,
  conductors,
}: {
  sheet: Sheet;
  reading: string | undefined;
  conductors: readonly (readonly [string, string])[];
}) {
  const lines = conductors.flatMap((pair) => {
    const found = between(sheet, pair);
    return found ? [found] : [];
  });
  if (!sheet.meter && lines.length === 0) return null;
  return (
    <svg class="laid" viewBox={`0 0 ${sheet.width} ${sheet.height}`} aria-hidden="true">
      {lines.map(([one, other]) => (
        <path
          key={`${one.x} ${one.y} ${other.x} ${other.y}`}
          class="conductor"
          d={`M${one.x} ${one.y}L${other.x} ${other.y}`}
        />
      ))}
      {sheet.meter && <MeterShown meter={sheet.meter} reading={reading ?? '? V'} />}
    </svg>
  );
}
