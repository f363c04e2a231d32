/** What moves a contact, left of it, joined to its blade by the dashed line. */
import type { Actuator } from '../parts/moving.ts';
import { box, dashed, line, moved, type Stroke } from './art.ts';

/** Height at which the dashed line meets the blade. */
export const JOIN = 23;
/** How far an actuator reaches left of the contact's line. */
export const ACTUATOR = 32;

interface Head {
  /** Drawn from the actuator's own middle: x = 0 is where the dashed line begins. */
  readonly strokes: readonly Stroke[];
  /** Where the dashed line leaves it, from its middle; left out where it comes from another contact. */
  readonly edge?: number;
}

export const ACTUATORS: Readonly<Record<Actuator, Head>> = {
  push: { strokes: [line([4, -6], [0, -6], [0, 6], [4, 6])], edge: 0 },
  mushroom: {
    strokes: [
      { kind: 'arc', at: [3, 0], r: 7, from: 105, to: 255 },
      line([1.2, -6.8], [1.2, 6.8]),
      line([7, 0], [9, 3], [11, 0]),
    ],
    edge: 0,
  },
  turn: { strokes: [line([-4, -6], [0, -6], [0, 6], [4, 6])], edge: 0 },
  field: { strokes: [box(-6, -5, 2, 5)], edge: 2 },
  limit: {
    strokes: [
      { kind: 'circle', at: [-3.8, 0], r: 3.8 },
      { kind: 'circle', at: [-3.8, 0], r: 0.8 },
    ],
    edge: 0,
  },
  float: {
    strokes: [{ kind: 'circle', at: [-2, 0], r: 4 }, line([-7, 0], [-6, 0]), line([-7, 4.8], [3, 4.8])],
    edge: 2,
  },
  elsewhere: { strokes: [], edge: -7 },
  joined: { strokes: [] },
  trip: {
    strokes: [box(-6, -6, 3, 6), line([-4, 4], [-1.5, 4], [-1.5, -3], [1, -3])],
    edge: 3,
  },
};

const MIDDLE = -24;

/** On the dashed line to a break contact that is opened directly, whatever its spring does: an arrow in a ring (from memory S00226). */
const DIRECT: readonly Stroke[] = [
  { kind: 'circle', at: [-7, JOIN], r: 4.5 },
  line([-11.5, JOIN], [-2.5, JOIN]),
  line([-5.3, JOIN - 2], [-2.5, JOIN], [-5.3, JOIN + 2]),
];
const OPENS_DIRECTLY: ReadonlySet<Actuator> = new Set(['mushroom', 'elsewhere', 'joined']);

/** `to`: the x of the blade at the height of the dashed line. `opens`: a break contact. */
export function actuatorStrokes(actuator: Actuator, to: number, opens: boolean): Stroke[] {
  const { strokes, edge } = ACTUATORS[actuator];
  return [
    ...moved(strokes, MIDDLE, JOIN),
    ...(opens && OPENS_DIRECTLY.has(actuator) ? DIRECT : []),
    ...(edge === undefined ? [] : [dashed([MIDDLE + edge, JOIN], [to, JOIN])]),
  ];
}
