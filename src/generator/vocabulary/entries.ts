/** Short ways to write the entries of a plant's vocabulary. */
import type { Meaning } from './colours.ts';
import type { Chain, Condition, Delayed, Movement, Sensor, Signal, Trio, Word } from './types.ts';

/** `Vent fan # tripped/abnormal` */
function word(entry: string): Word {
  const [text = '', meaning = ''] = entry.split('/');
  return { text, meaning: meaning as Meaning };
}

const BADNESS: Readonly<Record<Meaning, number>> = {
  emergency: 2,
  abnormal: 1,
  mandatory: 0,
  normal: 0,
  neutral: 0,
};

/** What it says when it has acted, and before: `signal('Vent fan #', 'contact', 'Vent fan # tripped/abnormal', 'Vent fan # healthy/normal')`. */
export function signal(thing: string, sensor: Sensor, whenActed: string, before: string): Signal {
  const acted = word(whenActed);
  const rest = word(before);
  const worse = BADNESS[acted.meaning] - BADNESS[rest.meaning];
  return { thing, sensor, acted, rest, wireOff: worse > 0 ? 'acted' : worse < 0 ? 'rest' : 'either' };
}

export const movement = (
  thing: string,
  one: readonly [string, string, string],
  other: readonly [string, string, string],
): Movement => {
  const way = ([button, doing, there]: readonly [string, string, string]) => ({ button, doing, there });
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

export const trio = (
  thing: string,
  sensor: Sensor,
  one: string,
  acted: string,
  trip: string,
  noTrip: string,
): Trio => ({ thing, sensor, one, acted: word(acted), trip: word(trip), noTrip });

export const delayed = (
  thing: string,
  signalText: string,
  without: string,
  late: string,
  idle: string,
  meaning: Meaning = 'normal',
): Delayed => ({ thing, signal: signalText, without, late: { text: late, meaning }, idle });
