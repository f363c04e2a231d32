/** Hops through a device's contacts, numbered after EN 50005. */
import type { Device, Step } from '../../../shared/circuit.ts';
import type { CoilPart, Pole, Toggle } from '../parts.ts';
import type { DeviceShelf } from './shelf.ts';

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
  /** Beside it; a function is asked when the drawing is done. */
  readonly text?: string | ((name: string) => string | undefined);
}

/** How many changeover poles a coil has, and how many it may have come to when the drawing is done. */
export interface Poles {
  readonly wished: number;
  readonly most: number;
}

/**
 * A coil with changeover poles, which are handed out in random order. `device` is asked for when the drawing is done, with the number
 * of poles there are by then: those wished for, and those that were taken besides.
 */
export function coilPart(
  shelf: DeviceShelf,
  name: string,
  { wished, most }: Poles,
  digits: typeof RELAY_DIGITS | typeof TIMER_DIGITS,
  device: (poles: number) => Device,
): CoilPart {
  const free = shelf.random.shuffle(Array.from({ length: wished }, (_, index) => index + 1));
  let poles = wished;
  const numbered = (number: number): Pole => {
    const [common, rest, made] = digits;
    return poleOf(name, [`${number}${common}`, `${number}${rest}`, `${number}${made}`]);
  };
  const pole = (): Pole => {
    const number = free.shift();
    if (number === undefined) throw new RangeError(`${name} has no pole left`);
    return numbered(number);
  };
  shelf.add(() => device(poles));
  shelf.spares.push({
    by: 'coil',
    take(form) {
      const number = free.shift() ?? (poles < most ? ++poles : undefined);
      return number === undefined ? undefined : numbered(number)[form === 'make' ? 'made' : 'rest'];
    },
  });
  return {
    name,
    coil: hop(name, 'A1', 'A2'),
    pole,
    made: () => pole().made,
    rest: () => pole().rest,
    held: heldBy(name),
  };
}
