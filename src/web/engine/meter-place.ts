/** Where a meter is drawn on a sheet: near the two points it is put on, over as little of the drawing as can be. */
import type { SceneSheet } from '../../drawing/index.ts';
import type { MeterDrawn, Spot } from './messages.ts';
import type { MeterOn } from './sheets.ts';

type Points = readonly [string, string];

const WIDTH = 92;
const HEIGHT = 24;
/** How far from the points it may be, and how finely places are tried. */
const AROUND = 130;
const STEP = 7;
/** A pixel of a symbol or text covered weighs as much as so many pixels of way. */
const COVERED = 1.5;
/** A pixel of a conductor covered. */
const CROSSED = 4;

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const overlap = (one: Box, other: Box): { across: number; high: number } => ({
  across: Math.min(one.right, other.right) - Math.max(one.left, other.left),
  high: Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top),
});

const area = (one: Box, other: Box): number => {
  const { across, high } = overlap(one, other);
  return across > 0 && high > 0 ? across * high : 0;
};

/** How much of a conductor lies under a box. */
const length = (one: Box, line: Box): number => {
  const { across, high } = overlap(one, line);
  return across >= 0 && high >= 0 ? across + high : 0;
};

/** The places of two terminals on this sheet that are nearest to each other; one may be drawn several times. */
function nearest(spots: readonly Spot[], points: readonly [string, string]): [Spot, Spot] | undefined {
  const [first, second] = points.map((point) =>
    spots.filter(({ item, kind }) => kind === 'terminal' && item === point),
  );
  let found: { pair: [Spot, Spot]; apart: number } | undefined;
  for (const one of first ?? [])
    for (const other of second ?? []) {
      const apart = Math.hypot(one.x - other.x, one.y - other.y);
      if (!found || apart < found.apart) found = { pair: [one, other], apart };
    }
  return found?.pair;
}

/** The meter on two terminals; undefined on a sheet where not both of them are, and where there is none. */
export const meterAt = (points: Points | undefined): MeterOn | undefined =>
  points && ((sheet, spots) => meterOn(sheet, spots, points));

function meterOn(sheet: SceneSheet, spots: readonly Spot[], points: Points): MeterDrawn | undefined {
  const pair = nearest(spots, points);
  if (!pair) return undefined;
  const ends = pair.map(
    ({ x, y, width, height }): Point => ({
      x: (x + width / 2) * sheet.width,
      y: (y + height / 2) * sheet.height,
    }),
  ) as [Point, Point];
  const [one, other] = ends;
  const middle = { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 };
  const things: Box[] = [
    ...sheet.symbols,
    ...sheet.texts.map(({ x, y, width, height }) => ({
      left: x,
      top: y,
      right: x + width,
      bottom: y + height,
    })),
  ];
  const lines = sheet.wires.map(
    ({ x1, y1, x2, y2 }): Box => ({
      left: Math.min(x1, x2),
      top: Math.min(y1, y2),
      right: Math.max(x1, x2),
      bottom: Math.max(y1, y2),
    }),
  );
  const tips = ends.map(({ x, y }): Box => ({ left: x - 12, top: y - 12, right: x + 12, bottom: y + 12 }));
  let best: { x: number; y: number; cost: number } | undefined;
  for (let x = middle.x - AROUND; x <= middle.x + AROUND; x += STEP)
    for (let y = Math.min(one.y, other.y) - AROUND; y <= Math.max(one.y, other.y) + AROUND; y += STEP) {
      const box = { left: x - WIDTH / 2, top: y - HEIGHT / 2, right: x + WIDTH / 2, bottom: y + HEIGHT / 2 };
      if (box.left < 2 || box.top < 2 || box.right > sheet.width - 2 || box.bottom > sheet.height - 2)
        continue;
      const covered = things.reduce((sum, thing) => sum + area(box, thing), 0);
      const crossed = lines.reduce((sum, line) => sum + length(box, line), 0);
      const onTips = tips.reduce((sum, tip) => sum + area(box, tip), 0);
      const way = ends.reduce((sum, end) => sum + Math.hypot(end.x - x, end.y - y), 0);
      const cost = COVERED * covered + CROSSED * crossed + 10 * onTips + way;
      if (!best || cost < best.cost) best = { x, y, cost };
    }
  return best && { x: best.x, y: best.y, width: WIDTH, height: HEIGHT, ends };
}
