import { randomActs, severalLists, someOn } from '../act-lists.ts';
import { cast, lower, numbered, titleOf } from '../casting.ts';
import { either } from '../chains.ts';
import { addLamp, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Toggle } from '../parts.ts';
import type { Family } from '../types.ts';

/** AB + BC + CA. With break contacts instead of makes it is its own dual: two lost signals of three trip it. */
export const twoOutOfThree: Family = {
  id: 'two-out-of-three',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const trio = cast(random, plant.trios);
    const letters = ['A', 'B', 'C'];
    const named = numbered(trio.trip.text, trio.number);
    const dual = size >= 2 && random.chance(0.4);
    const lettered = (text: string, letter: string): string =>
      numbered(text, trio.number).replace('@', letter);
    const sensors = letters.map((letter) => addSensor(board, trio.sensor, lettered(trio.one, letter)));
    const relays =
      size === 1
        ? undefined
        : letters.map((letter) => addRelay(board, source, { poles: 4, text: lettered(trio.one, letter) }));
    relays?.forEach((relay, index) => {
      board.line(source, 'control', [dual ? sensors[index]!.rest() : sensors[index]!.made(), relay.coil]);
    });
    const contact = (index: number) => {
      const relay = relays?.[index];
      if (!relay) return sensors[index]!.made();
      return dual ? relay.rest() : relay.made();
    };
    const pairs = random.shuffle([
      [0, 1],
      [1, 2],
      [2, 0],
    ]);
    const vote = either(...pairs.map((pair) => random.shuffle(pair).map(contact)));
    const tripped = addRelay(board, source, {
      poles: random.int(size >= 5 ? 3 : 1, 4),
      text: named,
    });
    board.line(source, 'control', [vote, tripped.coil]);
    const pole = tripped.pole();
    const trip = addLamp(board, source, named, trio.trip.meaning);
    board.line(source, 'lamps', [pole.made, trip.hop]);
    // One of three may have acted already, so this one isn't green.
    const held = addLamp(board, source, `No ${lower(named)}`, 'neutral');
    board.tail([pole.rest, held.hop]);
    if (size >= 3) {
      letters.slice(0, size >= 4 ? 3 : 1).forEach((letter, index) => {
        const lamp = addLamp(board, source, `${lettered(trio.one, letter)} acted`, 'abnormal');
        board.line(source, 'lamps', [contact(index), lamp.hop]);
      });
    }
    const toggles: Toggle[] = sensors.map(({ toggle }) => toggle);
    if (size >= 5) {
      // What stops when it trips.
      for (const { thing, running } of random.sample(plant.drives, size - 4)) {
        const machine = numbered(thing, trio.number);
        const sensor = addSensor(board, 'contact', `${machine} called for`);
        const relay = addRelay(board, source, { poles: 3 });
        board.line(source, 'control', [...random.shuffle([sensor.made(), tripped.rest()]), relay.coil]);
        const lamp = addLamp(board, source, `${machine} ${running}`, 'normal');
        board.line(source, 'lamps', [relay.made(), lamp.hop]);
        toggles.push(sensor.toggle);
      }
    }
    maybeSupplyLamp(random, opening);
    return finish(random, board, {
      family: twoOutOfThree.id,
      title: titleOf(plant, trio.thing, 'two out of three'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () =>
        random.chance(0.6) ? someOn(random, toggles) : randomActs(random, toggles, random.int(2, 4)),
      ),
    });
  },
};
