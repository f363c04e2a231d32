/** Short ways to write the entries of a plant's vocabulary: as in a dictionary, `~` stands for the machine that the entry is of. */
import type { Meaning } from './colours.ts';
import type { Chain, Condition, Delayed, Drive, Movement, Sensor, Signal, Trio, Way, Word } from './types.ts';

/** `~` at the beginning of a text, or further on in it. */
const full = (thing: string, text: string): string =>
  text.replace(/^~/, thing).replace('~', thing.charAt(0).toLowerCase() + thing.slice(1));

/** `~ tripped/abnormal` */
function word(thing: string, entry: string): Word {
  const [text = '', meaning = ''] = entry.split('/');
  return { text: full(thing, text), meaning: meaning as Meaning };
}

const isBad = ({ meaning }: Word): boolean => meaning === 'emergency' || meaning === 'abnormal';

/** What it says when it has acted, and before: `signal('Vent fan #', 'contact', '~ tripped/abnormal', '~ healthy/normal')`. */
export function signal(thing: string, sensor: Sensor, whenActed: string, before: string): Signal {
  const acted = word(thing, whenActed);
  const rest = word(thing, before);
  return { thing, sensor, acted, rest, wireOff: isBad(acted) ? 'acted' : isBad(rest) ? 'rest' : 'either' };
}

export const drive = (
  thing: string,
  running: string,
  fit: Pick<Drive, 'startsUnloaded' | 'jogs'> = {},
): Drive => ({ thing, running, ...fit });

/** On the button, while it moves, and at the limit. */
type Travel = readonly [button: string, doing: string, there: string];
type Turn = readonly [button: string, doing: string];

function moves(
  thing: string,
  motion: Movement['motion'],
  words: readonly [Travel | Turn, Travel | Turn],
): Movement {
  const way = ([button, doing, there]: Travel | Turn): Way => ({
    button: full(thing, button),
    doing: full(thing, doing),
    ...(there === undefined ? {} : { there: full(thing, there) }),
  });
  return { thing, motion, ways: [way(words[0]), way(words[1])] };
}

export const movement = (thing: string, one: Travel, other: Travel): Movement =>
  moves(thing, 'travels', [one, other]);
export const lifting = (thing: string, one: Travel, other: Travel): Movement =>
  moves(thing, 'lifts', [one, other]);
export const turning = (thing: string, one: Turn, other: Turn): Movement =>
  moves(thing, 'turns', [one, other]);

export const chain = (
  thing: string,
  conditions: readonly Condition[],
  may = `${thing} may run`,
  mayNot = `${thing} may not run`,
): Chain => ({ thing, conditions, may, mayNot });

/** What has to be there: a contact that it actuates. */
export const condition = (text: string, sensor: Sensor, passable?: 'passable'): Condition => ({
  text,
  actedBy: text,
  sensor,
  well: 'acted',
  passable: passable !== undefined,
});

/** What must not come: a contact that it actuates when it does. */
export const absence = (text: string, actedBy: string, sensor: Sensor, passable?: 'passable'): Condition => ({
  text,
  actedBy,
  sensor,
  well: 'rest',
  passable: passable !== undefined,
});

export const trio = (thing: string, sensor: Sensor, one: string, trip: string): Trio => ({
  thing,
  sensor,
  one,
  trip: word(thing, trip),
});

export const delayed = (
  thing: string,
  signalText: string,
  without: string,
  late: string,
  idle: string,
  meaning: Meaning = 'normal',
): Delayed => ({
  thing,
  signal: full(thing, signalText),
  without: full(thing, without),
  late: { text: full(thing, late), meaning },
  idle: full(thing, idle),
});

/** What hangs on one timer as well as on its own: one step of a start after the other, in any plant. */
export const nextStep = delayed('Next step', '~ called for', '~ not called for', '~ on', '~ off', 'neutral');
