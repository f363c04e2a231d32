/** Hops through a device's contacts, numbered after EN 50005. */
import type { Step } from '../../../shared/circuit.ts';
import type { CoilPart, Pole, Toggle } from '../parts.ts';
import type { Random } from '../random.ts';

export const hop = (device: string, enter: string, leave: string): Step => ({ device, enter, leave });

export const mainHops = (name: string, poles: number): Step[] =>
  Array.from({ length: poles }, (_, pole) => hop(name, String(2 * pole + 1), String(2 * pole + 2)));

/** Common, break leg and make leg of a changeover by their terminals. */
export const poleOf = (name: string, [common, rest, made]: readonly [string, string, string]): Pole => ({
  common: { device: name, enter: common },
  rest: hop(name, common, rest),
  made: hop(name, common, made),
});

/** Function digits of common, break leg and make leg. */
export const RELAY_DIGITS = ['1', '2', '4'] as const;
export const TIMER_DIGITS = ['5', '6', '8'] as const;

export const heldBy = (name: string): Toggle => ({
  on: { kind: 'hold', device: name },
  off: { kind: 'free', device: name },
  springs: false,
});

export interface RelayWish {
  readonly poles: number;
  readonly text?: string;
}

/** A coil with changeover poles, which are handed out in random order. */
export function coilPart(
  random: Random,
  name: string,
  poles: number,
  digits: typeof RELAY_DIGITS | typeof TIMER_DIGITS,
): CoilPart {
  const free = random.shuffle(Array.from({ length: poles }, (_, index) => index + 1));
  const pole = (): Pole => {
    const number = free.shift();
    if (number === undefined) throw new RangeError(`${name} has no pole left`);
    const [common, rest, made] = digits;
    return poleOf(name, [`${number}${common}`, `${number}${rest}`, `${number}${made}`]);
  };
  return {
    name,
    coil: hop(name, 'A1', 'A2'),
    pole,
    made: () => pole().made,
    rest: () => pole().rest,
    held: heldBy(name),
  };
}
