/** Large and unkind circuits, by size: for the hostile tests and the benchmarks. */
import type { Circuit, Device, Supply } from '../../shared/circuit.ts';
import { randomOf } from '../../src/generator/random.ts';
import { button, dc24, lamp, rated, relay, wired } from './hops.ts';

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

/** Each relay switches the next one on. `stopped`: all behind one emergency stop, so that they are one island. */
export function chain(relays: number, stopped = false): Circuit {
  const feed = stopped ? '-S2:22' : 'A:L+';
  return wired({
    devices: [button('-S1'), button('-S2'), lamp('-P1'), ...numbers(relays).map((n) => relay(`-K${n}`, 1))],
    paths: [
      ...(stopped ? ['A:L+ -S2:21-22'] : []),
      `${feed} -S1:13-14 -K1:A1-A2 A:L-`,
      ...numbers(relays - 1).map((n) => `${feed} -K${n}:11-14 -K${n + 1}:A1-A2 A:L-`),
      `${feed} -K${relays}:11-14 -P1:X1-X2 A:L-`,
    ],
  });
}

/** Relays that break their own coils, each behind the same button. */
export const buzzers = (relays: number): Circuit =>
  wired({
    devices: [button('-S1'), ...numbers(relays).map((n) => relay(`-K${n}`, 1))],
    paths: numbers(relays).map((n) => `A:L+ -S1:13-14 -K${n}:11-12 -K${n}:A1-A2 A:L-`),
  });

/** Pairs of relays that lock each other out, all put on at once by one button: as many races. */
export const races = (pairs: number): Circuit =>
  wired({
    devices: [button('-S1'), ...numbers(2 * pairs).map((n) => relay(`-K${n}`, 1))],
    paths: numbers(pairs).flatMap((n) => [
      `A:L+ -S1:13-14 -K${2 * n}:11-12 -K${2 * n - 1}:A1-A2 A:L-`,
      `-S1:14 -K${2 * n - 1}:11-12 -K${2 * n}:A1-A2 A:L-`,
    ]),
  });

/** Contactors with start buttons and seal-in, all behind one emergency stop and one control relay. */
export const sealed = (count: number): Circuit =>
  wired({
    devices: [
      { kind: 'emergency-stop', name: '-S900', contacts: [{ form: 'break', terminals: ['21', '22'] }] },
      relay('-K900', 1),
      ...numbers(count).flatMap((n): Device[] => [button(`-S${n}`), relay(`-K${n}`, 2), lamp(`-P${n}`)]),
    ],
    paths: [
      'A:L+ -S900:21-22 -K900:A1-A2 A:L-',
      'A:L+ -K900:11-14',
      ...numbers(count).flatMap((n) => [
        `-K900:14 -S${n}:13-14 -K${n}:A1-A2 A:L-`,
        `-K900:14 -K${n}:11-14 -S${n}:14`,
        `A:L+ -K${n}:21-24 -P${n}:X1-X2 A:L-`,
      ]),
    ],
  });

/** Relays in a circle, each behind break contacts of the next two: neither a ring nor few enough orders to try. */
export const entwined = (relays: number): Circuit =>
  wired({
    devices: [button('-S1'), ...numbers(relays).map((n) => relay(`-K${n}`, 2))],
    paths: numbers(relays).map((n) => {
      const [next, one] = [n + 1, n + 2].map((other) => ((other - 1) % relays) + 1);
      return `${n === 1 ? 'A:L+ -S1:13-14' : '-S1:14'} -K${next}:11-12 -K${one}:21-22 -K${n}:A1-A2 A:L-`;
    }),
  });

/** Lamps between junctions, every one on all others: a network that elimination fills up. */
export function mesh(lamps: number, junctions: number, supplies: readonly Supply[] = [dc24]): Circuit {
  const random = randomOf(`mesh ${lamps}`);
  const boards = numbers(Math.ceil(junctions / 60)).map(
    (n): Device => ({ kind: 'terminals', name: `-X${n}`, count: 60 }),
  );
  const at = (): string => {
    const index = random.int(0, junctions - 1);
    return `-X${1 + Math.floor(index / 60)}:${1 + (index % 60)}`;
  };
  const poles = supplies.flatMap(({ name, current }) =>
    (current === 'DC' ? ['L+', 'L-'] : current === 'AC' ? ['L', 'N'] : ['L1', 'L2', 'L3', 'N']).map(
      (pole) => `${name}:${pole}`,
    ),
  );
  const [first = 'A:L+'] = poles;
  return wired({
    supplies,
    devices: [button('-S1'), ...boards, ...numbers(lamps).map((n) => lamp(`-P${n}`, rated(24), 1 + (n % 7)))],
    paths: [
      `${first} -S1:13-14 ${at()}`,
      ...poles.slice(1).map((pole, index) => `${pole} -P${index + 1}:X1-X2 ${at()}`),
      ...numbers(lamps)
        .slice(poles.length)
        .map((n) => `${at()} -P${n}:X1-X2 ${at()}`),
    ],
  });
}
