/** What moves a contact by hand, by a process or by heat; drawn beside it, joined by the dashed line; `elsewhere`: drawn at another contact. */
export type Actuator = 'push' | 'mushroom' | 'turn' | 'field' | 'limit' | 'float' | 'trip' | 'elsewhere';

/** The mark on a contact that is late, or on a coil that is. */
export type Delay = 'operate' | 'release' | 'pulse';

/** Which of two a coil is: a latching relay's set or reset coil, a timer's control input. */
export type Winding = 'set' | 'reset' | 'control';
