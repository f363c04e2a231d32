import { randomActs, severalLists, someOn } from '../act-lists.ts';
import { castSignals, isFault, titleOf } from '../casting.ts';
import { either } from '../chains.ts';
import { addFlasher, addLamp, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Family } from '../types.ts';

/** A flasher has no steady state: what hangs on its contacts goes on and off for as long as its coil is energised. */
export const flashing: Family = {
  id: 'flashing',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const signals = castSignals(random, plant, size, isFault);
    const parts = signals.map((signal) => {
      const sensor = addSensor(board, signal.sensor, signal.text);
      const relay = addRelay(board, source, { poles: 4 });
      // Energised while all is well a relay calls with a wire off too; one that isn't never says that all is well.
      const broken = random.chance(0.6);
      board.line(source, 'control', [broken ? sensor.rest() : sensor.made(), relay.coil]);
      return {
        signal,
        sensor,
        well: broken ? relay.made : undefined,
        called: broken ? relay.rest : relay.made,
      };
    });
    const pace = random.pick([
      [0.5, 0.5],
      [1, 1],
      [1, 0.5],
      [0.5, 1],
    ] as const);
    const flasher = addFlasher(board, source, pace[0], pace[1], { poles: 2, text: 'Flasher' });
    // Some signals start the flasher; the others have steady lamps.
    const calling = random.sample(parts, Math.max(1, Math.ceil(size / 2)));
    board.line(source, 'control', [either(...calling.map(({ called }) => [called()])), flasher.coil]);
    const [alarm] = calling;
    const flash = addLamp(board, source, `${alarm!.signal.thing}: alarm`, alarm!.signal.acted.meaning);
    const beat = random.chance(0.7) ? flasher.made() : flasher.rest();
    board.line(source, 'lamps', [...random.shuffle([beat, alarm!.called()]), flash.hop]);
    if (size >= 2) {
      const beacon = addLamp(board, source, 'Alarm beacon', 'abnormal');
      board.line(source, 'lamps', [flasher.made(), beacon.hop]);
    }
    for (const { signal, well, called } of parts) {
      if (well) {
        const steady = addLamp(board, source, signal.rest.text, signal.rest.meaning);
        board.line(source, 'lamps', [well(), steady.hop]);
        if (!random.chance(0.4)) continue;
      }
      const acted = addLamp(board, source, signal.acted.text, signal.acted.meaning);
      board.line(source, 'lamps', [called(), acted.hop]);
    }
    maybeSupplyLamp(random, opening);
    const toggles = parts.map(({ sensor }) => sensor.toggle);
    return finish(random, board, {
      family: flashing.id,
      title: titleOf(plant, signals[0]!.thing, 'flashing lamps'),
      sheets: sheetsFor(random, size),
      acts: severalLists(3, () =>
        random.chance(0.6) ? someOn(random, toggles) : randomActs(random, toggles, random.int(1, size + 1)),
      ),
      ends: 'flashing',
    });
  },
};
