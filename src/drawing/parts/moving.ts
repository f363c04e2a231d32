/**
 * What moves a contact by hand, by a process or by heat; drawn beside it, joined by the dashed line. An emergency stop's head is drawn
 * once: at its other contacts it is `elsewhere`, or they are `joined` to it by the dashed line.
 */
export type Actuator =
  | 'push'
  | 'mushroom'
  | 'turn'
  | 'field'
  | 'limit'
  | 'float'
  | 'trip'
  | 'elsewhere'
  | 'joined';

/** The mark on a contact that is late, or on a coil that is. */
export type Delay = 'operate' | 'release' | 'pulse';

/** Which of two a coil is: a latching relay's set or reset coil, a timer's control input. */
export type Winding = 'set' | 'reset' | 'control';
