/**
 * What changes in a scenario where every relay follows its coil at once: the milliseconds that it takes are folded into the edge,
 * so that acts and the times of timers can be read off.
 */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { CoilReading } from '../../../shared/solution.ts';
import { actSaid, hasCoil } from '../../circuit/index.ts';
import {
  advance,
  doAct,
  type Machine,
  machineOf,
  planOf,
  play,
  readState,
  type State,
  settleAfter,
} from '../../solver/index.ts';
import type { Rename } from '../letters.ts';
import { type ActAt, isFeeding, isHigh, type Level, type Line, Lines, type Signals } from './lines.ts';

interface Stands {
  readonly line: Line;
  readonly level: Level;
  /** How it stands where nothing has happened. */
  readonly idle: Level;
}

const level = (state: string): Level =>
  state === 'lit' || state === '1' ? 1 : state === 'dark' || state === '0' ? 0 : 0.5;

/** Of a device with several loads, as a motor has, what they come to. */
const together = (levels: readonly Level[]): Level =>
  levels.every((each) => each === levels[0]) ? levels[0]! : 0.5;

/** Reads every line off a state. */
class Reader {
  private readonly circuit: Circuit;
  private readonly live: boolean;
  private readonly rename: Rename;
  /** Coils between their limits stay as they were. */
  private readonly energised = new Map<string, Level>();

  constructor(circuit: Circuit, live: boolean, rename: Rename) {
    this.circuit = circuit;
    this.live = live;
    this.rename = rename;
  }

  private named(id: string): string {
    const [owner = '', point] = id.split(':');
    return `${this.rename(owner)}${point ? `:${point}` : ''}`;
  }

  private coil(id: string, { band, energised }: CoilReading): Stands {
    const before = this.energised.get(id) ?? 0;
    const now = energised ? 1 : band === 'between' ? before : 0;
    this.energised.set(id, now);
    return { line: { id: `${id} coil`, name: this.named(id), of: 'coil', rank: 1 }, level: now, idle: 0 };
  }

  private contacts(machine: Machine, { at }: State): Stands[] {
    const devices = new Map(this.circuit.devices.map((device) => [device.name, device]));
    return machine.plan.mechanisms.map(({ id, device: name }, index) => {
      const device = devices.get(name);
      const coil = device !== undefined && hasCoil(device);
      const high = isHigh(device, 31 - Math.clz32(at[index]!));
      return {
        line: {
          id: `${id} contacts`,
          name: this.named(id),
          ...(coil ? { of: 'contacts' } : {}),
          rank: coil ? 1 : 0,
        },
        level: high ? 1 : 0,
        idle: this.live && isFeeding(device) ? 1 : 0,
      };
    });
  }

  read(machine: Machine, state: State): Stands[] {
    const { coils, lamps, loads, inputs } = readState(machine, state);
    const shown = new Map<string, Level[]>();
    for (const [id, says] of Object.entries({ ...lamps, ...loads })) {
      const owner = id.split(':')[0]!;
      shown.set(owner, [...(shown.get(owner) ?? []), level(says)]);
    }
    return [
      ...Object.entries(coils).map(([id, reading]) => this.coil(id, reading)),
      ...this.contacts(machine, state),
      ...[...shown].map(
        ([id, levels]): Stands => ({
          line: { id, name: this.named(id), rank: 2 },
          level: together(levels),
          idle: 0,
        }),
      ),
      ...Object.entries(inputs).map(
        ([id, says]): Stands => ({
          line: { id, name: this.named(id), rank: 2 },
          level: level(says),
          idle: 0,
        }),
      ),
    ];
  }
}

/** A coil and its contacts that always stand alike are one line. */
function merged({ signals, ...rest }: Signals): Signals {
  const ofCoil = new Map(signals.map((signal) => [signal.id, signal]));
  const alike = (id: string): boolean => {
    const [coil, contacts] = [ofCoil.get(`${id} coil`), ofCoil.get(`${id} contacts`)];
    return JSON.stringify(coil?.changes) === JSON.stringify(contacts?.changes);
  };
  return {
    ...rest,
    signals: signals.flatMap(({ of, ...signal }) => {
      const owner = signal.id.replace(/ (?:coil|contacts)$/, '');
      if (of === undefined) return [signal];
      if (!alike(owner)) return [{ ...signal, of }];
      return of === 'coil' ? [signal] : [];
    }),
  };
}

/** Undefined where something never rests: that takes the times that relays have. */
export function atOnce(circuit: Circuit, scenario: Scenario, rename: Rename): Signals | undefined {
  const machine = machineOf(planOf(circuit, scenario.faults));
  const reader = new Reader(circuit, scenario.start === 'live', rename);
  const lines = new Lines(circuit);
  const { state, steady } = play(machine, { start: scenario.start, acts: [] });
  let rests = steady;
  const moments: number[] = [];
  const acts: ActAt[] = [];
  const look = (): void => {
    const at = moments.length - 1;
    for (const { line, level: now, idle } of reader.read(machine, state))
      lines.stands(line, { at, level: now }, idle);
  };
  look();
  for (const act of scenario.acts) {
    if (act.kind !== 'wait') {
      moments.push(state.now * 1000);
      acts.push({ at: moments.length - 1, act: actSaid(act, circuit) });
      rests = doAct(machine, state, act) && rests;
      look();
      continue;
    }
    if (moments.length === 0) moments.push(0);
    const passed = advance(machine, state, act.seconds, (mechanisms) => {
      if (settleAfter(machine, state, mechanisms) < 0) rests = false;
      if (state.now * 1000 > moments.at(-1)!) moments.push(state.now * 1000);
      look();
    });
    rests = rests && passed;
  }
  if (state.now * 1000 > moments.at(-1)!) moments.push(state.now * 1000);
  if (!rests || state.restless) return undefined;
  return merged({ moments, signals: lines.all(), acts, operateTimes: false });
}
