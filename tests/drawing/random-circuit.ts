/**
 * Random circuits for the drawing: every device kind, several supplies and sheets, branches anywhere. They need not make
 * sense as controls; whatever the notation can write has to be drawn right.
 */
import type { Circuit, ContactSpec, Device, Path, Step, Supply } from '../../shared/circuit.ts';

export interface Dice {
  readonly below: (limit: number) => number;
  readonly chance: (share: number) => boolean;
  readonly pick: <T>(list: readonly T[]) => T;
}

/** A small generator of our own, so that a seed means the same circuit wherever the test runs. */
export function diceOf(seed: number): Dice {
  let state = (seed * 2654435761 + 1013904223) >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number): number => Math.floor(next() * limit);
  return {
    below,
    chance: (share) => next() < share,
    pick: <T>(list: readonly T[]): T => list[below(list.length)] as T,
  };
}

const WORDS = [
  'Vent',
  'Tray pump',
  'Brine low',
  'Ramp raised',
  'Sieve',
  'Mist line',
  'Shade',
  'Hopper',
  'Ice store door',
  'Ready',
];
const RATING = { volts: 24, current: 'AC' as const };

type Hop = readonly [device: string, from: string, to: string];

interface Maker {
  readonly devices: Device[];
  /** Ways through contacts, and loads, that no path has used yet. */
  readonly ways: Hop[];
  readonly loads: Hop[];
}

function addDevice(maker: Maker, dice: Dice, counts: Map<string, number>): void {
  const name = (letter: string): string => {
    const number = (counts.get(letter) ?? 0) + 1;
    counts.set(letter, number);
    return `-${letter}${number}`;
  };
  const text = dice.chance(0.5)
    ? { text: Array.from({ length: 1 + dice.below(3) }, () => dice.pick(WORDS)).join(' ') }
    : {};
  const add = (
    device: Device,
    ways: readonly (readonly [string, string])[],
    loads: readonly (readonly [string, string])[] = [],
  ): void => {
    maker.devices.push(device);
    for (const [from, to] of ways) maker.ways.push([device.name, from, to]);
    for (const [from, to] of loads) maker.loads.push([device.name, from, to]);
  };
  const poleWays = (poles: number, late: boolean): [string, string][] =>
    Array.from({ length: poles }, (_, p) => p + 1).flatMap((p) =>
      late
        ? [[`${p}5`, `${p}6`] as [string, string], [`${p}5`, `${p}8`] as [string, string]]
        : [[`${p}1`, `${p}2`] as [string, string], [`${p}1`, `${p}4`] as [string, string]],
    );
  const coil: [string, string][] = [['A1', 'A2']];
  const contacts = (): ContactSpec[] => {
    const list: ContactSpec[] = [];
    for (let p = 1; p <= 1 + dice.below(3); p++) {
      const form = dice.pick(['make', 'break', 'changeover'] as const);
      const digits = form === 'make' ? ['3', '4'] : form === 'break' ? ['1', '2'] : ['1', '2', '4'];
      list.push({ form, terminals: digits.map((digit) => `${p}${digit}`) });
    }
    return list;
  };
  const waysOf = (list: readonly ContactSpec[]): [string, string][] =>
    list.flatMap(({ terminals }) =>
      terminals.slice(1).map((to): [string, string] => [terminals[0] as string, to]),
    );
  const mains = (count: number): [string, string][] =>
    Array.from({ length: count }, (_, i) => [String(2 * i + 1), String(2 * i + 2)]);
  switch (dice.below(18)) {
    case 0:
    case 1:
    case 2: {
      const poles = 1 + dice.below(4);
      add({ kind: 'relay', name: name('K'), ...text, poles, rating: RATING }, poleWays(poles, false), coil);
      break;
    }
    case 3: {
      const [count, list] = [dice.below(4), contacts()];
      add(
        { kind: 'contactor', name: name('K'), ...text, mains: count, contacts: list, rating: RATING },
        [...mains(count), ...waysOf(list)],
        coil,
      );
      break;
    }
    case 4: {
      const poles = 1 + dice.below(2);
      const kind = dice.pick(['on-delay', 'off-delay'] as const);
      add(
        { kind, name: name('K'), ...text, seconds: 1 + dice.below(90), poles, rating: RATING },
        poleWays(poles, true),
        coil,
      );
      break;
    }
    case 5:
      add(
        { kind: 'flasher', name: name('K'), ...text, on: 0.5, off: 1, poles: 1, rating: RATING },
        poleWays(1, true),
        coil,
      );
      break;
    case 6:
      add(
        { kind: 'latching-relay', name: name('K'), ...text, poles: 2, rating: RATING },
        poleWays(2, false),
        [...coil, ['B1', 'B2']],
      );
      break;
    case 7: {
      const list = contacts();
      add({ kind: 'push-button', name: name('S'), ...text, contacts: list, colour: 'white' }, waysOf(list));
      break;
    }
    case 8: {
      const list = contacts();
      add({ kind: 'emergency-stop', name: name('S'), ...text, contacts: list }, waysOf(list));
      break;
    }
    case 9: {
      const list = contacts().map((spec) => ({ ...spec, positions: [dice.pick(['HAND', 'AUTO'])] }));
      add(
        { kind: 'selector', name: name('S'), ...text, positions: ['OFF', 'HAND', 'AUTO'], contacts: list },
        waysOf(list),
      );
      break;
    }
    case 10: {
      const list = contacts();
      const kind = dice.pick(['field-contact', 'limit-switch', 'float-switch'] as const);
      add({ kind, name: name('B'), ...text, contacts: list }, waysOf(list));
      break;
    }
    case 11:
      add({ kind: 'overload', name: name('F'), ...text }, [...mains(3), ['95', '96'], ['97', '98']]);
      break;
    case 12: {
      const poles = 1 + dice.below(3);
      const kind = dice.pick(['fuse', 'breaker'] as const);
      add({ kind, name: name('F'), ...text, poles, amps: 4 }, mains(poles));
      break;
    }
    case 13: {
      const poles = 1 + dice.below(4);
      add({ kind: 'isolator', name: name('Q'), ...text, poles }, mains(poles));
      break;
    }
    case 14: {
      const kind = dice.pick(['lamp', 'sounder'] as const);
      add({ kind, name: name('H'), ...text, rating: RATING }, [], [['X1', 'X2']]);
      break;
    }
    case 15:
      add({ kind: 'valve', name: name('Y'), ...text, rating: RATING }, [], coil);
      break;
    case 16: {
      const count = 1 + dice.below(6);
      add(
        {
          kind: 'inputs',
          name: name('A'),
          ...text,
          count,
          type: '24V-1',
          points: Array.from({ length: count }, () => dice.pick(WORDS)),
        },
        [],
        Array.from({ length: count }, (_, i) => [`I${i + 1}`, 'COM']),
      );
      break;
    }
    default: {
      const count = 1 + dice.below(4);
      add(
        { kind: 'outputs', name: name('A'), ...text, count, points: [] },
        Array.from({ length: count }, (_, i) => ['COM', `Q${i + 1}`]),
      );
    }
  }
}

/** Power paths of one motor: isolator, contactor, overload, three phases. */
function powerPaths(maker: Maker, dice: Dice, supply: string): Path[] {
  const mark = 90 + dice.below(9);
  const [isolator, contactor, overload, motor] = [`-Q${mark}`, `-K${mark}`, `-F${mark}`, `-M${mark}`];
  const six = dice.chance(0.3);
  maker.devices.push(
    { kind: 'isolator', name: isolator, poles: 3 },
    { kind: 'contactor', name: contactor, mains: 3, contacts: [], rating: RATING },
    { kind: 'overload', name: overload },
    { kind: 'motor', name: motor, terminals: six ? 6 : 3, volts: 400 },
  );
  maker.loads.push([contactor, 'A1', 'A2']);
  const paths = ['U', 'V', 'W'].map((letter, index): Path => {
    const pole = (device: string): Step => ({
      device,
      enter: String(2 * index + 1),
      leave: String(2 * index + 2),
    });
    return {
      sheet: 1,
      steps: [
        { device: supply, enter: `L${index + 1}` },
        pole(isolator),
        pole(contactor),
        pole(overload),
        { device: motor, enter: `${letter}1` },
      ],
    };
  });
  if (six)
    paths.push({
      sheet: 1,
      steps: ['U2', 'V2', 'W2'].map((enter) => ({ device: motor, enter })),
    });
  return paths;
}

export interface Wildness {
  /** Paths; also how many devices. */
  readonly paths: number;
  readonly sheets: number;
  /** Share of odd steps: hops against their direction, over both legs, terminals only joined. */
  readonly odd: number;
}

export function randomCircuit(dice: Dice, { paths: wanted, sheets, odd }: Wildness): Circuit {
  const supplies: Supply[] = [
    { name: 'A', volts: 24, current: dice.pick(['AC', 'DC'] as const), earthed: true },
  ];
  if (dice.chance(0.4)) supplies.push({ name: 'B', volts: 24, current: 'DC', earthed: false });
  if (dice.chance(0.25)) supplies.push({ name: 'P', volts: 400, current: '3AC', earthed: true });
  const maker: Maker = { devices: [], ways: [], loads: [] };
  const counts = new Map<string, number>();
  for (let i = 0; i < wanted + 2; i++) addDevice(maker, dice, counts);
  maker.devices.push({ kind: 'terminals', name: '-X1', count: 40 });
  const paths: Path[] = [];
  const power = supplies.find(({ current }) => current === '3AC');
  if (power && dice.chance(0.8)) paths.push(...powerPaths(maker, dice, power.name));
  const joined: Step[] = [];
  let terminal = 0;
  const takeFrom = (list: Hop[]): Hop | undefined => list.splice(dice.below(list.length), 1)[0];
  for (let p = 0; p < wanted; p++) {
    const control = dice.pick(supplies.filter(({ current }) => current !== '3AC'));
    const [feed, back] = control.current === 'AC' ? ['L', 'N'] : ['L+', 'L-'];
    const steps: Step[] = [];
    const other = joined.length > 0 && dice.chance(0.55) ? dice.pick(joined) : undefined;
    steps.push(other ?? { device: control.name, enter: feed as string });
    const ways = dice.below(4) + (maker.loads.length === 0 ? 1 : 0);
    for (let i = 0; i < ways; i++) {
      if (dice.chance(0.1) && terminal < 40) {
        terminal += 1;
        steps.push({ device: '-X1', enter: String(terminal) });
      }
      const way = takeFrom(maker.ways);
      if (!way) break;
      const [device, from, to] = way;
      const against = dice.chance(odd);
      steps.push(against ? { device, enter: to, leave: from } : { device, enter: from, leave: to });
    }
    if (dice.chance(0.75)) {
      const load = takeFrom(maker.loads);
      if (load) {
        const [device, enter, leave] = load;
        steps.push(dice.chance(odd / 3) ? { device, enter } : { device, enter, leave });
      }
      if (dice.chance(0.08)) {
        const second = takeFrom(maker.loads);
        if (second) steps.push({ device: second[0], enter: second[1], leave: second[2] });
      }
      if (dice.chance(0.92)) steps.push({ device: control.name, enter: back as string });
    } else if (joined.length > 1 && dice.chance(0.8)) steps.push(dice.pick(joined));
    if (dice.chance(odd / 2) && joined.length > 0)
      steps.splice(1 + dice.below(steps.length - 1), 0, dice.pick(joined));
    if (steps.every(({ device }) => !device.startsWith('-'))) continue;
    if (steps.length < 2) steps.push({ device: control.name, enter: back as string });
    for (const { device, enter, leave } of steps) {
      if (!device.startsWith('-')) continue;
      joined.push({ device, enter });
      if (leave) joined.push({ device, enter: leave });
    }
    paths.push({ sheet: 1 + Math.floor((p * sheets) / wanted), steps });
  }
  return {
    title: 'Any circuit',
    supplies,
    devices: maker.devices,
    sheets: Array.from({ length: sheets }, (_, i) => ({ number: i + 1 })),
    paths,
  };
}
