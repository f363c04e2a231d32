/**
 * What symbols are drawn with. One grid for all: the origin is where the symbol's line enters it from above, y grows
 * downwards, a contact is 44 high, the legs of a changeover stand 10 to either side.
 */
export type Point = readonly [x: number, y: number];

export type Stroke =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      readonly closed?: boolean;
      readonly filled?: boolean;
      readonly dashed?: boolean;
      /** The moving part of a contact: drawn heavier. */
      readonly blade?: boolean;
      /** In this half of what is filled in a state. */
      readonly inside?: Half;
      /** Conducts from this of the part's spots. */
      readonly spot?: number;
    }
  | { readonly kind: 'circle'; readonly at: Point; readonly r: number; readonly filled?: boolean }
  /** Degrees, clockwise on the paper from the right. */
  | {
      readonly kind: 'arc';
      readonly at: Point;
      readonly r: number;
      readonly from: number;
      readonly to: number;
    }
  | {
      readonly kind: 'letter';
      readonly at: Point;
      readonly text: string;
      readonly size: number;
      readonly inside?: Half;
    };

/** Of what is half filled the lower half is. */
export type Half = 'upper' | 'lower';

/** What is drawn with a line alone. */
export type Outline = Exclude<Stroke, { kind: 'letter' }>;

/** How a symbol stands: which of its ways are closed, in the order of the part's ways. */
export interface Pose {
  readonly closed: readonly boolean[];
  /** Motors: the x of each port from the symbol's middle. */
  readonly ports: readonly number[];
}

export interface SymbolArt {
  /** How far it reaches from its line to either side. */
  readonly left: number;
  readonly right: number;
  readonly height: number;
  /** The drawn state: which ways are closed at rest. */
  readonly rest: readonly boolean[];
  readonly strokes: (pose: Pose) => readonly Stroke[];
  /** What stands beside it: an actuator, the brake of a late contact. */
  readonly beside?: (pose: Pose) => readonly Stroke[];
}

export const HEIGHT = 44;
export const LEG = 10;
/** Between the conductors of a three-phase group. */
export const PHASE = 38;

/** A lead of the symbol's: part of the conductor at that spot. */
export const lead = (spot: number, ...points: readonly Point[]): Stroke => ({ kind: 'line', points, spot });
export const line = (...points: readonly Point[]): Outline => ({ kind: 'line', points });
/** A blade hangs on the conductor at its pivot. */
export const blade = (spot: number, ...points: readonly Point[]): Stroke => ({
  kind: 'line',
  points,
  blade: true,
  spot,
});
export const dashed = (...points: readonly Point[]): Stroke => ({ kind: 'line', points, dashed: true });
export const box = (x1: number, y1: number, x2: number, y2: number, filled = false): Outline => ({
  kind: 'line',
  closed: true,
  ...(filled ? { filled } : {}),
  points: [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ],
});

/** The same upside down. */
export function turnedOver(strokes: readonly Stroke[], height: number): Stroke[] {
  const over = ([x, y]: Point): Point => [x, height - y];
  return strokes.map((stroke) => mapped(stroke, over, (degrees) => -degrees));
}

/** The stroke with every point moved by `point`, and the ends of arcs by `angle`. */
function mapped(stroke: Stroke, point: (at: Point) => Point, angle: (degrees: number) => number): Stroke {
  switch (stroke.kind) {
    case 'line':
      return { ...stroke, points: stroke.points.map(point) };
    case 'circle':
    case 'letter':
      return { ...stroke, at: point(stroke.at) };
    case 'arc': {
      const ends = [angle(stroke.from), angle(stroke.to)];
      return { ...stroke, at: point(stroke.at), from: Math.min(...ends), to: Math.max(...ends) };
    }
  }
}

/** The same somewhere else. */
export const moved = (strokes: readonly Stroke[], dx: number, dy: number): Stroke[] =>
  strokes.map((stroke) =>
    mapped(
      stroke,
      ([x, y]) => [x + dx, y + dy],
      (degrees) => degrees,
    ),
  );
