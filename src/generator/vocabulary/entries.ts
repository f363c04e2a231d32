/** Short ways to write the entries of a plant's vocabulary. */
import type { Meaning } from './colours.ts';
import type { Condition, Delayed, Movement, Sensor, Signal, Trio } from './types.ts';

/** `signal('Vent fan #', 'contact', 'tripped/abnormal', 'healthy/normal')`: what it says when it has acted, and before. */
export function signal(thing: string, sensor: Sensor, acted: string, rest: string): Signal {
  const word = (entry: string) => {
    const [text = '', meaning = ''] = entry.split('/');
    return { text, meaning: meaning as Meaning };
  };
  return { thing, sensor, acted: word(acted), rest: word(rest) };
}

export const movement = (
  thing: string,
  one: readonly [string, string, string],
  other: readonly [string, string, string],
): Movement => {
  const way = ([button, doing, there]: readonly [string, string, string]) => ({ button, doing, there });
  return { thing, ways: [way(one), way(other)] };
};

export const condition = (
  text: string,
  sensor: Sensor,
  well: 'rest' | 'acted',
  passable?: 'passable',
): Condition => ({ text, sensor, well, passable: passable !== undefined });

export const trio = (thing: string, sensor: Sensor, text: string, meaning: Meaning): Trio => ({
  thing,
  sensor,
  acted: { text, meaning },
});

export const delayed = (
  thing: string,
  signalText: string,
  without: string,
  late: string,
  meaning: Meaning = 'normal',
): Delayed => ({ thing, signal: signalText, without, late: { text: late, meaning } });
