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

export const movement = (
  thing: string,
  one: readonly [string, string, string],
  other: readonly [string, string, string],
): Movement => {
  const way = (words: readonly [string, string, string]): Way => {
    const [button, doing, there] = words.map((text) => full(thing, text));
    return { button: button!, doing: doing!, there: there! };
  };
  return { thing, ways: [way(one), way(other)] };
};

export const chain = (
  thing: string,
  conditions: readonly Condition[],
  may = `${thing} may run`,
  mayNot = `${thing} may not run`,
): Chain => ({ thing, conditions, may, mayNot });

export const condition = (
  text: string,
  sensor: Sensor,
  well: 'rest' | 'acted',
  passable?: 'passable',
): Condition => ({ text, sensor, well, passable: passable !== undefined });

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
