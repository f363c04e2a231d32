import type { Act, Fault } from '../../../shared/scenario.ts';
import { someOn } from '../act-lists.ts';
import { castSignals, isFault, titleOf } from '../casting.ts';
import { addLamp, addRelay, addSensor, addSource } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { followersFor, open, sheetsFor } from '../opening.ts';
import { pickControl, pickExtraLowControl } from '../sources.ts';
import type { Family } from '../types.ts';

/**
 * Fault relays that are energised while all is well. A broken wire, an open coil and a lost supply release the relay as
 * the fault itself does, so only what is a fault when it has acted is watched like this; the lamps are on a supply of their own from size 2, so that they can still tell.
 */
export const healthyRelay: Family = {
  id: 'healthy-relay',
  size: { min: 1, max: 8 },
  draft(random, { size }) {
    const { plant, board, source } = open(random);
    // One of the two is earthed, so that they stay isolated from one another; the other is at extra-low voltage.
    const { earthed } = board.supplies[0]!;
    const picked = earthed ? pickExtraLowControl(random) : pickControl(random);
    const lamps = size === 1 ? source : addSource(board, picked, 'Lamp supply', !earthed);
    const signals = castSignals(random, plant, size, isFault);
    const parts = signals.map((signal) => {
      const sensor = addSensor(board, signal.sensor, signal.text);
      const relay = addRelay(board, source, { poles: random.int(1, 4) });
      const contact = sensor.rest();
      board.line(source, 'control', [contact, relay.coil]);
      const pole = relay.pole();
      const fault = addLamp(board, lamps, signal.acted.text, signal.acted.meaning);
      const well = addLamp(board, lamps, signal.rest.text, signal.rest.meaning);
      const legs = random.shuffle([
        [pole.rest, fault.hop],
        [pole.made, well.hop],
      ]);
      board.line(lamps, 'lamps', legs[0]!);
      board.tail(legs[1]!);
      return { sensor, contact, relay };
    });
    const toggles = parts.map(({ sensor }) => sensor.toggle);
    const lose: Act = { kind: 'open', device: source.protection };
    const broken = (): Fault => {
      const { contact, relay } = random.pick(parts);
      return random.chance(0.5)
        ? { kind: 'loose', at: `${contact.device}:${random.pick([contact.enter, contact.leave!])}` }
        : { kind: 'open', from: `${relay.name}:A1`, to: `${relay.name}:A2` };
    };
    const plain = someOn(random, toggles);
    const cases: { acts: readonly Act[]; faults: readonly Fault[] }[] = random.shuffle([
      { acts: plain, faults: [] },
      { acts: [...plain, random.pick(toggles.filter(({ on }) => plain.includes(on))).off], faults: [] },
      { acts: random.chance(0.5) ? [] : someOn(random, toggles), faults: [broken()] },
      { acts: [lose], faults: [] },
      { acts: [...plain, lose, { kind: 'close', device: source.protection }], faults: [] },
    ]);
    return finish(random, board, {
      family: healthyRelay.id,
      title: titleOf(plant, signals[0]!.thing, 'fault relays'),
      sheets: sheetsFor(random, size),
      followers: followersFor(size),
      acts: cases.map(({ acts }) => acts),
      faults: cases.map(({ faults }) => faults),
    });
  },
};
