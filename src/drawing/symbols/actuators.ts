/** What moves a contact, left of it, joined to its blade by the dashed line. */
import type { Actuator } from '../parts/index.ts';
import { box, dashed, line, moved, type Stroke } from './art.ts';

/** Height at which the dashed line meets the blade. */
export const JOIN = 23;
/** How far an actuator reaches left of the contact's line. */
export const ACTUATOR = 32;

/** Drawn from the actuator's own middle: x = 0 is where the dashed line begins. */
function head(actuator: Actuator): Stroke[] {
  switch (actuator) {
    case 'push':
      return [line([4, -6], [0, -6], [0, 6], [4, 6])];
    case 'mushroom':
      return [
        { kind: 'arc', at: [3, 0], r: 7, from: 105, to: 255 },
        line([1.2, -6.8], [1.2, 6.8]),
        line([7, 0], [9, 3], [11, 0]),
      ];
    case 'turn':
      return [line([-4, -6], [0, -6], [0, 6], [4, 6])];
    case 'field':
      return [box(-6, -5, 2, 5)];
    case 'limit':
      return [{ kind: 'circle', at: [-3, 0], r: 3 }, line([-6, -5], [-6, 5])];
    case 'float':
      return [{ kind: 'circle', at: [-2, 0], r: 4 }, line([-7, 0], [-6, 0]), line([-7, 4.8], [3, 4.8])];
    case 'trip':
      return [box(-6, -6, 3, 6), line([-4, 4], [-1.5, 4], [-1.5, -3], [1, -3])];
  }
}

/** Where the dashed line leaves each actuator, from its middle. */
const EDGE: Readonly<Record<Actuator, number>> = {
  push: 0,
  mushroom: 0,
  turn: 0,
  field: 2,
  limit: 0,
  float: 2,
  trip: 3,
};

const MIDDLE = -24;

/** `to`: the x of the blade at the height of the dashed line. */
export const actuatorStrokes = (actuator: Actuator, to: number): Stroke[] => [
  ...moved(head(actuator), MIDDLE, JOIN),
  dashed([MIDDLE + EDGE[actuator], JOIN], [to, JOIN]),
];
