import type { Act } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import { titleOf } from '../casting.ts';
import { either, startOf } from '../chains.ts';
import { addButton, addLamp, addLatchingRelay, addOverload, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Toggle } from '../parts.ts';
import type { Family } from '../types.ts';

/** A latching relay chooses which of two machines answers the demand; it keeps its place without supply. */
export const dutyStandby: Family = {
  id: 'duty-standby',
  size: { min: 1, max: 5 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const pair = random.pick(plant.pairs);
    const [a, b] = pair.units;
    const choice = addLatchingRelay(board, source, { poles: random.int(2, 4), text: 'Duty choice' });
    const toB = addButton(board, `${b} on duty`, 'start');
    const toA = addButton(board, `${a} on duty`, 'start');
    // Each button's break contact keeps the two coils from being fed together.
    board.line(source, 'control', [...random.shuffle([toB.made(), toA.rest()]), choice.coil]);
    board.line(source, 'control', [...random.shuffle([toA.made(), toB.rest()]), choice.reset]);
    const duty = choice.pole();
    const dutyA = addLamp(board, source, `${a} on duty`, 'neutral');
    const dutyB = addLamp(board, source, `${b} on duty`, 'neutral');
    board.line(source, 'lamps', [duty.rest, dutyA.hop]);
    board.tail([duty.made, dutyB.hop]);

    const demand: Toggle[] = [];
    const trips: Toggle[] = [];
    if (size >= 2) {
      const level = addSensor(board, 'contact', pair.demand);
      demand.push(level.toggle);
      const runs = [a, b].map((unit) => addRelay(board, source, { poles: random.int(3, 4), text: unit }));
      const pole = choice.pole();
      if (size < 4) {
        board.line(source, 'control', [level.made(), pole.rest, runs[0]!.coil]);
        board.tail([pole.made, runs[1]!.coil]);
      } else {
        // A trip of the one calls the other, whatever the choice is.
        const overloads = [a, b].map((unit) => addOverload(board, `${unit} overload`));
        trips.push(...overloads.map(({ toggle }) => toggle));
        const [first, second] = overloads;
        board.line(source, 'control', [
          level.made(),
          either([pole.rest], [second!.made]),
          first!.rest,
          runs[0]!.coil,
        ]);
        const other = either([pole.made], [first!.made]);
        board.tail([other, second!.rest, runs[1]!.coil], startOf(pole.made));
      }
      runs.forEach((run, index) => {
        const lamp = addLamp(board, source, `${pair.units[index]} running`, 'normal');
        board.line(source, 'lamps', [run.made(), lamp.hop]);
        if (size < 3) return;
        const idle = addLamp(board, source, `${pair.units[index]} stopped`, 'neutral');
        board.line(source, 'lamps', [run.rest(), idle.hop]);
      });
      if (size >= 5) {
        const none = addLamp(board, source, 'Neither running', 'neutral');
        board.line(source, 'lamps', [...random.shuffle([runs[0]!.rest(), runs[1]!.rest()]), none.hop]);
      }
    }
    maybeSupplyLamp(random, opening);

    const set = pulse(toB.toggle);
    const reset = pulse(toA.toggle);
    const lost: Act[] = [
      { kind: 'open', device: source.protection },
      { kind: 'close', device: source.protection },
    ];
    const want = demand.map(({ on }) => on);
    const shapes: (() => Act[])[] = [
      () => [...set, ...want],
      () => [...want, ...set],
      () => [...set, ...want, ...lost],
      () => [...set, ...reset, ...want],
      () => [...set, ...lost, ...reset],
      () => [toB.toggle.on, ...want],
      ...(demand.length > 0 ? [() => [...set, ...want, demand[0]!.off], () => [...want]] : []),
      ...(trips.length > 0
        ? [
            () => [...want, trips[0]!.on],
            () => [...set, ...want, trips[1]!.on],
            () => [...want, trips[0]!.on, ...set],
          ]
        : []),
    ];
    return finish(random, board, {
      family: dutyStandby.id,
      title: titleOf(plant, pair.thing, 'duty and standby'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
