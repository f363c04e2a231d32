import type { Step } from '../../../shared/circuit.ts';
import type { Act, Fault } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import { cast, lower, titleOf } from '../casting.ts';
import { type Chain, either } from '../chains.ts';
import {
  addButton,
  addContactor,
  addEmergencyStop,
  addLamp,
  addOverload,
  addRelay,
} from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Toggle } from '../parts.ts';
import type { Random } from '../random.ts';
import { statusLamps } from '../status-lamps.ts';
import type { Family } from '../types.ts';

interface Wiring {
  readonly coil: string;
  readonly seal: Step;
  readonly starts: readonly Step[];
  readonly stops: readonly Step[];
}

/** The start buttons that start something: pressed while nothing that stops is held or tripped. */
function startedBy(acts: readonly Act[], starts: readonly Step[], halting: readonly string[]): Set<string> {
  const held = new Set<string>();
  const started = new Set<string>();
  for (const act of acts) {
    if (!('device' in act)) continue;
    const on = act.kind === 'press' || act.kind === 'trip';
    if (!halting.includes(act.device)) {
      if (on && held.size === 0 && starts.some(({ device }) => device === act.device))
        started.add(act.device);
    } else if (on) held.add(act.device);
    else held.delete(act.device);
  }
  return started;
}

/**
 * What goes wrong with a seal: its own wire, a stop's, a start's, the coil, a stop that doesn't open. Only what these acts need is
 * missed: nothing shows of a start that nobody presses, or of a seal while the start is held.
 */
function wrongIn(
  random: Random,
  acts: readonly Act[],
  { coil, seal, starts, stops }: Wiring,
  halting: readonly string[],
): Fault[] {
  const started = startedBy(acts, starts, halting);
  if (started.size === 0) return [];
  const letGo = acts.some((act) => act.kind === 'release' && started.has(act.device));
  const pressed = starts.filter(({ device }) => started.has(device));
  const contact = random.pick([...(letGo ? [seal, seal] : []), ...stops, ...pressed]);
  const off: Fault = {
    kind: 'loose',
    at: `${contact.device}:${random.pick([contact.enter, contact.leave!])}`,
  };
  const welded = stops
    .filter(({ device }) => acts.some((act) => act.kind === 'press' && act.device === device))
    .map(
      ({ device, enter, leave }): Fault => ({
        kind: 'welded',
        from: `${device}:${enter}`,
        to: `${device}:${leave}`,
      }),
    );
  const open: Fault = { kind: 'open', from: `${coil}:A1`, to: `${coil}:A2` };
  return [random.pick([off, off, off, open, ...welded])];
}

/**
 * Holds after start is let go, stops, and stays off after a loss of supply: a start works by energising, a stop by
 * de-energising, and no restart when the supply returns (IEC 60204-1, 9.2 and 7.5).
 */
export const sealIn: Family = {
  id: 'seal-in',
  size: { min: 1, max: 7 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const drive = cast(random, plant.drives);
    const contactor = random.chance(0.4);
    // With the seal, the lamps and what follows; one pole more stays unused now and then.
    const poles = size >= 6 ? 4 : random.int(3, 4);
    const contacts = contactor
      ? addContactor(board, source, poles, random.int(1, 2), { mains: 3, text: drive.thing })
      : undefined;
    const relay = contacts ? undefined : addRelay(board, source, { poles, text: drive.thing });
    const main = (contacts ?? relay)!;
    const starts = Array.from({ length: size >= 3 ? 2 : 1 }, (_, index) =>
      addButton(board, `Start ${lower(drive.thing)}${index === 0 ? '' : ' from far end'}`, 'start'),
    );
    const stops = Array.from({ length: size >= 5 ? 2 : 1 }, (_, index) =>
      addButton(board, `Stop ${lower(drive.thing)}${index === 0 ? '' : ' from far end'}`, 'stop'),
    );
    const trips: Toggle[] = [];
    const stopped = stops.map((stop) => stop.rest());
    const series: Chain[number][] = [...stopped];
    if (size >= 2) {
      const overload = addOverload(board, `${drive.thing} overload`);
      series.push(overload.rest);
      trips.push(overload.toggle);
      const tripped = addLamp(board, source, `${drive.thing} tripped`, 'abnormal');
      board.line(source, 'lamps', [overload.made, tripped.hop]);
    }
    if (size >= 4) {
      const stop = addEmergencyStop(board, 'Emergency stop');
      series.unshift(stop.rest());
      trips.push(stop.toggle);
      const pressed = addLamp(board, source, 'Emergency stop pressed', 'emergency');
      board.line(source, 'lamps', [stop.made(), pressed.hop]);
    }
    const started = starts.map((start) => start.made());
    const seal = main.made();
    const held = either(...random.shuffle([...started, seal].map((contact) => [contact])));
    // Mostly after everything that stops; before it, or between, it does the same.
    const at = random.chance(0.6) ? series.length : random.int(0, series.length - 1);
    board.line(source, 'control', [...series.slice(0, at), held, ...series.slice(at), main.coil]);

    const running = addLamp(board, source, `${drive.thing} ${drive.running}`, 'normal');
    const standing = addLamp(board, source, `${drive.thing} stopped`, 'neutral');
    // Who starts it from the far end sees it run there.
    const far =
      starts.length > 1 && random.chance(0.4)
        ? addLamp(board, source, `${drive.thing} ${drive.running}, far end`, 'normal')
        : undefined;
    statusLamps(random, opening, main, {
      running: far ? { hop: either([running.hop], [far.hop]) } : running,
      standing,
    });
    if (size >= 6) {
      const follower = addRelay(board, source, { poles: 2, text: 'Next machine' });
      board.line(source, 'control', [main.made(), follower.coil]);
      const pole = follower.pole();
      const one = addLamp(board, source, 'Next machine may start', 'normal');
      board.line(source, 'lamps', [pole.made, one.hop]);
      if (size >= 7) {
        const other = addLamp(board, source, 'Next machine waits', 'neutral');
        board.tail([pole.rest, other.hop]);
      }
    }
    maybeSupplyLamp(random, opening, 0.3);

    const start = (): Act[] => pulse(random.pick(starts).toggle);
    const stop = (): Act[] => pulse(random.pick(stops).toggle);
    const lost: Act[] = [
      { kind: 'open', device: source.protection },
      { kind: 'close', device: source.protection },
    ];
    const wiring = { coil: main.name, seal, starts: started, stops: stopped };
    const halting = [
      ...stops.map(({ name }) => name),
      ...trips.map(({ on }) => ('device' in on ? on.device : '')),
    ];
    const shapes: (() => Act[])[] = [
      start,
      () => [random.pick(starts).toggle.on],
      () => [...start(), ...stop()],
      () => [...start(), ...lost],
      () => stop(),
      () => [...start(), ...stop(), ...start()],
      () => [random.pick(stops).toggle.on, ...start()],
      () => [...start(), random.pick(stops).toggle.on, random.pick(starts).toggle.on],
      ...trips.flatMap((trip) => [
        () => [...start(), trip.on, trip.off],
        () => [trip.on, ...start(), trip.off, ...start()],
      ]),
    ];
    const lists = severalLists(5, () => random.pick(shapes)());
    return finish(random, board, {
      family: sealIn.id,
      title: titleOf(plant, drive.thing, 'start and stop'),
      sheets: sheetsFor(random, size),
      acts: lists,
      // One list in a few with something wrong.
      faults: lists.map((acts) => (random.chance(0.3) ? wrongIn(random, acts, wiring, halting) : [])),
    });
  },
};
