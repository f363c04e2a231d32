/**
 * Random circuits for the solver's tests: not drawings anyone would sign, but every topology there is. Contacts and loads
 * are strewn between the supplies' poles and loose junctions, so loads come in series, feeds run backwards, commons
 * are missing and supplies touch.
 */
import type { Circuit, Device, Supply } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import type { Random } from '../../src/generator/random.ts';
import { rated, wired } from './hops.ts';
import { contactsOfDevice, netsOf, type Standing, type Wiring } from './wiring.ts';

const VOLTS = [12, 24, 24, 48, 110, 230] as const;

export interface TangleOptions {
  readonly supplies?: readonly Supply[];
  readonly relays?: number;
  readonly loads?: number;
  readonly junctions?: number;
  /** Rated voltages of coils and loads to choose from. */
  readonly volts?: readonly number[];
  /** Fuses, breakers and isolators, mostly at a pole. */
  readonly feeds?: number;
  /** Share of contacts that are wired up. */
  readonly density?: number;
  /** A conductor that touches earth, where a supply is earthed. */
  readonly earthFault?: boolean;
}

export function randomSupplies(random: Random, count: number): Supply[] {
  return ['A', 'B', 'C'].slice(0, count).map((name) => {
    const current = random.pick(['AC', 'DC', 'DC'] as const);
    return { name, volts: random.pick(VOLTS), current, earthed: random.chance(0.4) };
  });
}

const poles = ({ name, current }: Supply): string[] =>
  (current === 'DC' ? ['L+', 'L-'] : current === 'AC' ? ['L', 'N'] : ['L1', 'L2', 'L3', 'N']).map(
    (terminal) => `${name}:${terminal}`,
  );

/** Two-terminal parts of a device that can be strewn: contacts, then loads, as `from leave` terminal pairs. */
function partsOf(device: Device): { contacts: [string, string][]; loads: [string, string][] } {
  const short = (terminal: string): string => terminal.slice(device.name.length + 1);
  const contacts = contactsOfDevice(device).map(({ from, to }): [string, string] => [short(from), short(to)]);
  const coil: [string, string] = ['A1', 'A2'];
  switch (device.kind) {
    case 'relay':
    case 'contactor':
    case 'on-delay':
    case 'off-delay':
    case 'flasher':
    case 'valve':
      return { contacts, loads: [coil] };
    case 'supplied-off-delay':
      return { contacts, loads: [coil, ['B1', 'A2']] };
    case 'latching-relay':
      return { contacts, loads: [coil, ['B1', 'B2']] };
    case 'lamp':
    case 'sounder':
      return { contacts, loads: [['X1', 'X2']] };
    case 'motor':
      return {
        contacts,
        loads:
          device.terminals === 6
            ? [
                ['U1', 'U2'],
                ['V1', 'V2'],
                ['W1', 'W2'],
              ]
            : [
                ['U1', 'V1'],
                ['W1', 'W1'],
              ],
      };
    case 'inputs':
      return {
        contacts,
        loads: Array.from({ length: device.count }, (_, index): [string, string] => [`I${index + 1}`, 'COM']),
      };
    default:
      return { contacts, loads: [] };
  }
}

function randomDevices(random: Random, relays: number, loads: number, volts: readonly number[]): Device[] {
  const rating = () => rated(random.pick(volts), random.pick(['AC', 'DC'] as const));
  const contacts = [
    { form: 'changeover' as const, terminals: ['11', '12', '14'] },
    { form: 'make' as const, terminals: ['23', '24'] },
    { form: 'break' as const, terminals: ['31', '32'] },
  ];
  const moving = Array.from({ length: relays }, (_, index): Device => {
    const name = `-K${index + 1}`;
    const poles = random.int(1, 3);
    switch (random.int(0, 7)) {
      case 0:
        return { kind: 'latching-relay', name, poles, rating: rating() };
      case 1:
        return { kind: 'contactor', name, mains: random.int(0, 3), contacts, rating: rating() };
      case 2:
        return { kind: 'on-delay', name, seconds: 5, poles: random.int(1, 2), rating: rating() };
      case 3:
        return { kind: 'push-button', name: `-S${index + 1}`, contacts };
      case 4:
        return {
          kind: 'selector',
          name: `-S${index + 1}`,
          positions: ['Off', 'Hand', 'Auto'],
          contacts: [
            { form: 'make', terminals: ['13', '14'], positions: ['Hand', 'Auto'] },
            { form: 'break', terminals: ['21', '22'], positions: ['Auto'] },
          ],
        };
      default:
        return { kind: 'relay', name, poles, rating: rating() };
    }
  });
  const resting = Array.from({ length: loads }, (_, index): Device => {
    const name = `-P${index + 1}`;
    const watts = random.pick([0.5, 1, 2, 3, 5, 8, 40]);
    switch (random.int(0, 5)) {
      case 0:
        return { kind: 'valve', name, watts, rating: rating() };
      case 1:
        return {
          kind: 'inputs',
          name,
          count: random.int(1, 3),
          type: random.pick(['3.3V', '24V-1', '24V-2', '24V-3'] as const),
          points: [],
        };
      case 2:
        return { kind: 'sounder', name, watts, rating: rating() };
      default:
        return { kind: 'lamp', name, watts, rating: rating() };
    }
  });
  return [...moving, ...resting];
}

function randomFeeds(random: Random, count: number): Device[] {
  return Array.from({ length: count }, (_, index): Device => {
    const name = `-F${index + 1}`;
    const poles = random.int(1, 2);
    switch (random.int(0, 2)) {
      case 0:
        return { kind: 'fuse', name, poles, ...(random.chance(0.5) ? { amps: random.pick([1, 2, 6]) } : {}) };
      case 1:
        return { kind: 'breaker', name, poles };
      default:
        return { kind: 'isolator', name, poles };
    }
  });
}

/** Strewn devices: junctions are the terminals of `-X1`. */
export function tangle(random: Random, options: TangleOptions = {}): Circuit {
  const supplies = options.supplies ?? randomSupplies(random, random.chance(0.3) ? 2 : 1);
  const devices = randomDevices(
    random,
    options.relays ?? random.int(1, 5),
    options.loads ?? random.int(1, 6),
    options.volts ?? VOLTS,
  );
  const junctions = options.junctions ?? random.int(2, 8);
  const ends = Array.from({ length: junctions }, (_, index) => `-X1:${index + 1}`);
  const all = [...supplies.flatMap(poles), ...ends];
  // Loads hang on a return more often than not, as they do in life; or two drawings in three would be dark.
  const returns = supplies.map((supply) => poles(supply).at(-1)!);
  const paths: string[] = [];
  const feeds = randomFeeds(random, options.feeds ?? 0);
  for (const { from, to, mechanism } of feeds.flatMap(contactsOfDevice)) {
    const hop = `${from}-${to.slice(mechanism.length + 1)}`;
    paths.push(
      `${random.chance(0.8) ? random.pick(all.slice(0, -junctions)) : random.pick(all)} ${hop} ${random.pick(ends)}`,
    );
  }
  for (const device of devices) {
    const { contacts, loads } = partsOf(device);
    for (const [from, to] of contacts) {
      if (random.chance(options.density ?? 0.6))
        paths.push(`${random.pick(all)} ${device.name}:${from}-${to} ${random.pick(ends)}`);
    }
    for (const [from, to] of loads) {
      const back = random.chance(0.6) ? random.pick(returns) : random.pick(all);
      paths.push(`${random.pick(all)} ${device.name}:${from}-${to} ${back}`);
    }
  }
  const earthed = supplies.find((supply) => supply.earthed);
  if (options.earthFault && earthed) paths.push(`${random.pick(ends)} ${poles(earthed).at(-1)!}`);
  const board: Device = { kind: 'terminals', name: '-X1', count: junctions };
  // A motor's lone winding end, "W1-W1", is a stop and no hop.
  return wired({
    supplies,
    devices: [...feeds, ...devices, board],
    paths: paths.map((path) => path.replace(/:([A-Z0-9]+)-\1\b/, ':$1')),
  });
}

/** Faults of every kind, placed where the circuit has something. */
export function randomFaults(random: Random, circuit: Circuit, count: number): Fault[] {
  const contacts = circuit.devices.flatMap(contactsOfDevice);
  const hops = circuit.paths.flatMap(({ steps }) => steps.filter(({ leave }) => leave !== undefined));
  const coils = hops.filter(({ enter }) => /^[AXIUVWB]/.test(enter));
  const terminals = circuit.paths.flatMap(({ steps }) =>
    steps.flatMap(({ device, enter, leave }) =>
      [enter, ...(leave ? [leave] : [])].map((at) => `${device}:${at}`),
    ),
  );
  let crossed = false;
  const ref = (text: string) => text as `${string}:${string}`;
  return Array.from({ length: count }, (): Fault[] => {
    const kind = random.int(0, 6);
    if (kind <= 1 && contacts.length > 0) {
      const { from, to } = random.pick(contacts);
      return [{ kind: 'dirty', from: ref(from), to: ref(to), ohms: random.pick([5, 47, 330, 2200, 20_000]) }];
    }
    if (kind === 2 && contacts.length > 0) {
      const { from, to } = random.pick(contacts);
      return [{ kind: 'welded', from: ref(from), to: ref(to) }];
    }
    if (kind === 3) return [{ kind: 'loose', at: ref(random.pick(terminals)) }];
    if (kind === 4 && coils.length > 0) {
      const { device, enter, leave } = random.pick(coils);
      return [
        {
          kind: random.pick(['open', 'shorted'] as const),
          from: ref(`${device}:${enter}`),
          to: ref(`${device}:${leave}`),
        },
      ];
    }
    if (kind === 5 && !crossed) {
      crossed = true;
      return [{ kind: 'crossed', one: ref(random.pick(terminals)), other: ref(random.pick(terminals)) }];
    }
    const { steps } = random.pick(circuit.paths);
    const [before, after] = [steps[0]!, steps[1]!];
    return [
      {
        kind: 'cut',
        from: ref(`${before.device}:${before.leave ?? before.enter}`),
        to: ref(`${after.device}:${after.enter}`),
      },
    ];
  })
    .flat()
    .filter((fault) => fault.kind !== 'crossed' || fault.one !== fault.other);
}

/** A random standing: every mechanism somewhere, some on their way. */
export function randomStanding(random: Random, circuit: Circuit): Map<string, number[]> {
  const standing = new Map<string, number[]>();
  for (const device of circuit.devices) {
    const positions = device.kind === 'selector' ? device.positions.length : 2;
    for (const mechanism of new Set(contactsOfDevice(device).map((contact) => contact.mechanism))) {
      const at = random.int(0, positions - 1);
      const other = random.int(0, positions - 1);
      standing.set(mechanism, random.chance(0.15) && other !== at ? [at, other] : [at]);
    }
  }
  return standing;
}

/** Whether two poles of different potential are joined without resistance: nothing to be measured then. */
export function isShorted(wiring: Wiring): boolean {
  // Potentials are followed along joins and sources; a second, different one is a contradiction.
  const netOf = netsOf(wiring);
  const links = new Map<string, { to: string; gain: readonly number[] }[]>();
  const link = (from: string, to: string, gain: readonly number[]): void => {
    links.set(from, [...(links.get(from) ?? []), { to, gain }]);
    links.set(to, [...(links.get(to) ?? []), { to: from, gain: gain.map((volts) => -volts) }]);
  };
  for (const { plus, minus, direct, re, im } of wiring.sources)
    link(netOf(minus), netOf(plus), [direct, re, im]);
  for (const earth of wiring.earths) link('earth', netOf(earth), [0, 0, 0]);
  const known = new Map<string, readonly number[]>();
  for (const start of links.keys()) {
    if (known.has(start)) continue;
    known.set(start, [0, 0, 0]);
    const queue = [start];
    for (const net of queue) {
      const here = known.get(net)!;
      for (const { to, gain } of links.get(net)!) {
        const there = known.get(to);
        if (!there) {
          known.set(
            to,
            here.map((volts, part) => volts + gain[part]!),
          );
          queue.push(to);
        } else if (there.some((volts, part) => Math.abs(volts - here[part]! - gain[part]!) > 1e-6))
          return true;
      }
    }
  }
  return false;
}

/** A standing as the solver's position masks. */
export const maskOf = (standing: Standing, mechanism: string): number =>
  (standing.get(mechanism) ?? [0]).reduce((mask, position) => mask | (1 << position), 0);
