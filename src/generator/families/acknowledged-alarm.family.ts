import type { Act } from '../../../shared/scenario.ts';
import { pulse, randomActs, severalLists } from '../act-lists.ts';
import { castSignals, isFault, titleOf } from '../casting.ts';
import { either, startOf } from '../chains.ts';
import { addButton, addFlasher, addLamp, addRelay, addSensor, addSounder } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Family } from '../types.ts';

/**
 * Off; flashing and sounding; acknowledged: steady and silent; cleared: off. An alarm that clears before it is acknowledged
 * keeps flashing (ISA-18.1). For each signal one relay remembers that it came, another that
 * it was acknowledged.
 */
export const acknowledgedAlarm: Family = {
  id: 'acknowledged-alarm',
  size: { min: 1, max: 2 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const signals = castSignals(random, plant, size, isFault);
    const seen = addButton(board, 'Acknowledge', 'reset');
    const flasher = addFlasher(board, source, 0.5, 0.5, { poles: 2, text: 'Flasher' });
    const parts = signals.map((signal) => {
      const came = addRelay(board, source, { poles: 4, text: `${signal.thing}: alarm` });
      const known = addRelay(board, source, { poles: 4, text: `${signal.thing}: acknowledged` });
      const contact = random.chance(0.6) ? 'made' : 'rest';
      // A break contact closes on the fault when what it acts on is that all is well.
      const sensor = addSensor(board, signal.sensor, contact === 'made' ? signal.text : signal.rest.text);
      const open_ = contact === 'made' ? sensor.made : sensor.rest;
      board.line(source, 'control', [
        either(...random.shuffle([[open_()], [came.made()]])),
        ...random.shuffle([known.rest(), seen.rest()]),
        came.coil,
      ]);
      board.line(source, 'control', [
        open_(),
        either(...random.shuffle([[seen.made()], [known.made()]])),
        known.coil,
      ]);
      return { signal, sensor, came, known };
    });
    board.line(source, 'control', [either(...parts.map(({ came }) => [came.made()])), flasher.coil]);
    // One set of contacts starts the flasher and sounds the horn.
    const horn = addSounder(board, source, 'Horn');
    board.tail([horn.hop], startOf(flasher.coil));
    for (const { signal, came, known } of parts) {
      const lamp = addLamp(board, source, signal.acted.text, signal.acted.meaning);
      const beat = random.shuffle([came.made(), flasher.made()]);
      board.line(source, 'lamps', [either(...random.shuffle([beat, [known.made()]])), lamp.hop]);
    }
    if (random.chance(0.5)) {
      const quiet = addLamp(board, source, 'No new alarm', 'neutral');
      board.line(source, 'lamps', [...parts.map(({ came }) => came.rest()), quiet.hop]);
    }
    maybeSupplyLamp(random, opening, 0.4);
    const [first, second] = random.shuffle(parts.map(({ sensor }) => sensor.toggle));
    const ack = pulse(seen.toggle);
    const shapes: (() => Act[])[] = [
      () => [first!.on],
      () => [first!.on, ...ack],
      () => [first!.on, first!.off],
      () => [first!.on, ...ack, first!.off],
      () => [first!.on, first!.off, ...ack],
      () => [first!.on, ...ack, first!.off, first!.on],
      () => [seen.toggle.on, first!.on],
      ...(second
        ? [
            () => [first!.on, ...ack, second.on],
            () => [first!.on, second.on, ...ack],
            () => [first!.on, second.on, first!.off, ...ack],
            () => randomActs(random, [first!, second, seen.toggle], random.int(2, 5)),
          ]
        : []),
    ];
    return finish(random, board, {
      family: acknowledgedAlarm.id,
      title: titleOf(plant, signals[0]!.thing, 'alarm with acknowledge'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
      ends: 'flashing',
    });
  },
};
