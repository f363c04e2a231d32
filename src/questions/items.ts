/** What can be asked about: lamps and other loads, inputs, relays, terminals; and how each can stand. */
import type { Circuit, Device } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { anatomyOf, deviceOf, parseTerminalRef, type ReadAs, readAs } from '../circuit/index.ts';
import { distance, type Machine, type Network, type State, solveNetwork } from '../solver/index.ts';
import type { Named, StateName } from '../words/index.ts';
import { mayBeBetween } from './may-be-between.ts';
import type { Standpoint } from './solving.ts';

export type ItemKind = 'lamp' | 'load' | 'input' | 'relay' | 'terminal';

/** How each can stand. The first two are always possible. */
export const STATES: Readonly<Record<ItemKind, readonly StateName[]>> = {
  lamp: ['lit', 'dark', 'dim', 'flashing'],
  load: ['on', 'off', 'weak', 'pulsing'],
  input: ['1', '0', 'undefined', 'changing'],
  relay: ['operated', 'rest', 'changing'],
  terminal: ['live', 'dead'],
};

/** States of what gets a part of its voltage. */
const BETWEEN: ReadonlySet<StateName> = new Set<StateName>(['dim', 'weak', 'undefined']);
/** States of what never rests. */
export const RESTLESS: ReadonlySet<StateName> = new Set<StateName>(['flashing', 'pulsing', 'changing']);

/** What a load is asked as, by what is read off it. Coils are asked as what they move, inputs point by point. */
const ASKED_AS: Readonly<Partial<Record<ReadAs, Exclude<ItemKind, 'terminal'>>>> = {
  lamp: 'lamp',
  load: 'load',
  winding: 'load',
};

/** The load at a point of a module, `-A1:I2`. */
const pointAt = (device: Device, terminal: string) =>
  anatomyOf(device).loads.find(({ point }) => point === terminal);

/** What an item of `states` is in this circuit; undefined when there is no such thing. Terminals are told apart by the kind. */
export function itemKind(circuit: Circuit, item: string): Exclude<ItemKind, 'terminal'> | undefined {
  const place = parseTerminalRef(item);
  const device = deviceOf(circuit, place?.device ?? item);
  if (!device) return undefined;
  if (place) return pointAt(device, place.terminal) && 'input';
  const { loads } = anatomyOf(device);
  const [asked] = loads.flatMap(({ role }) => ASKED_AS[readAs(role)] ?? []);
  return asked ?? (loads.some(({ mechanism }) => mechanism !== undefined) ? 'relay' : undefined);
}

/** An item with its text, `-A1:I2` and "Fan tripped"; a terminal has none. */
export function namedItem(circuit: Circuit, item: string): Named {
  const place = parseTerminalRef(item);
  const device = deviceOf(circuit, place?.device ?? item);
  const text = device && (place ? pointAt(device, place.terminal)?.text : device.text);
  return text ? { name: item, text } : { name: item };
}

/** Whether a flasher is drawn, so that something may flash. */
const hasFlasher = (circuit: Circuit): boolean =>
  circuit.devices.some((device) => anatomyOf(device).mechanisms.some(({ drive }) => drive === 'flasher'));

/** The states to choose from for an item of this kind in this circuit. They don't depend on the right answer. */
export function offered(kind: ItemKind, circuit: Circuit, scenario: Scenario): readonly StateName[] {
  const between = mayBeBetween(circuit, scenario);
  const restless = hasFlasher(circuit);
  return STATES[kind].filter(
    (state) => (between || !BETWEEN.has(state)) && (restless || !RESTLESS.has(state)),
  );
}

const LOAD_WORDS = { lit: 'on', dark: 'off', dim: 'weak', flashing: 'pulsing' } as const;

/** How an item stands, in the words of `STATES`. */
export function stateOf({ readings, changing }: Standpoint, item: string): StateName {
  const { lamps, loads, inputs, coils } = readings;
  const lamp = lamps[item];
  if (lamp) return lamp;
  const load = loads[item];
  if (load) return LOAD_WORDS[load];
  const input = inputs[item];
  if (input) return input;
  if (changing.includes(item)) return 'changing';
  const coil = coils[item];
  if (!coil) throw new RangeError(`nothing to read at ${item}`);
  return coil.operated ? 'operated' : 'rest';
}

/** From this part of the supply's voltage a terminal counts as live, below the second as dead. Common practice, no source. */
const LIVE_FROM = 0.1;
const DEAD_BELOW = 0.02;

const networks = new WeakMap<State, Network>();

/** The network of a settled state, worked out once for all its terminals. */
function networkOf(machine: Machine, state: State): Network {
  const network = networks.get(state) ?? solveNetwork(machine, state.at, state.supplyOn);
  networks.set(state, network);
  return network;
}

/**
 * Whether a terminal has a voltage against the return of its own supply: live, dead, or `undefined` between. One that
 * nothing joins to a supply is dead here; on site nothing is until it has been proved.
 */
export function liveState({ machine, state }: Standpoint, terminal: string): StateName {
  const { volts, reference } = networkOf(machine, state);
  const node = machine.plan.nodeOf.get(terminal)!;
  let most = 0;
  machine.plan.supplies.forEach(({ poles, supply }, index) => {
    const common = poles.at(-1)!.node;
    if (!state.supplyOn[index] || reference[node] !== reference[common]) return;
    most = Math.max(most, distance(volts, node, common) / supply.volts);
  });
  if (most >= LIVE_FROM) return 'live';
  return most < DEAD_BELOW ? 'dead' : 'undefined';
}
