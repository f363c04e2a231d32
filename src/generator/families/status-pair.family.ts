import { randomActs, severalLists, someOn } from '../act-lists.ts';
import { castSignals, titleOf, wellAtRest } from '../casting.ts';
import { addLamp, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { followersFor, maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Family } from '../types.ts';

/** One lamp at rest, the other when the relay has operated: both legs of one changeover, fed through its common. */
export const statusPair: Family = {
  id: 'status-pair',
  size: { min: 1, max: 8 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const signals = castSignals(random, plant, size, (signal) => size > 1 || !wellAtRest(signal));
    const toggles = signals.map((signal) => {
      const sensor = addSensor(board, signal.sensor, signal.text);
      const relay = addRelay(board, source, { poles: random.int(1, 4) });
      // Over a break contact, where it is well that nothing has acted: with a wire off the relay says that it isn't.
      const broken = wellAtRest(signal);
      board.line(source, 'control', [broken ? sensor.rest() : sensor.made(), relay.coil]);
      const pole = relay.pole();
      const rest = addLamp(board, source, signal.rest.text, signal.rest.meaning);
      const acted = addLamp(board, source, signal.acted.text, signal.acted.meaning);
      const legs = random.shuffle([
        [broken ? pole.made : pole.rest, rest.hop],
        [broken ? pole.rest : pole.made, acted.hop],
      ]);
      board.line(source, 'lamps', legs[0]!);
      board.tail(legs[1]!);
      // What is energised already isn't held in by hand.
      return !broken && random.chance(0.3) ? relay.held : sensor.toggle;
    });
    maybeSupplyLamp(random, opening);
    const lists = severalLists(3, () =>
      random.chance(0.6) ? someOn(random, toggles) : randomActs(random, toggles, random.int(2, size + 1)),
    );
    return finish(random, board, {
      family: statusPair.id,
      title: titleOf(plant, signals[0]!.thing, 'status lamps'),
      sheets: sheetsFor(random, size),
      followers: followersFor(size),
      acts: lists,
    });
  },
};
