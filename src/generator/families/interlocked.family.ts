import type { Step } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import { cast, lower, numbered, titleOf } from '../casting.ts';
import { either } from '../chains.ts';
import { addButton, addContactor, addLamp, addRelay, addSensor, addSounder } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { ActuatedPart } from '../parts.ts';
import type { Family } from '../types.ts';

/** Two directions, each kept out by a break contact of the other: the first one wins. */
export const interlocked: Family = {
  id: 'interlocked',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const movement = cast(random, plant.movements);
    const sealed = size >= 2;
    const contactors = random.chance(0.5);
    const sides = movement.ways.map((way) => {
      const coil = contactors
        ? addContactor(board, source, 3, 2, { mains: 3, text: numbered(way.doing, movement.number) })
        : addRelay(board, source, { poles: 4, text: numbered(way.doing, movement.number) });
      return {
        way,
        coil,
        button: addButton(board, numbered(way.button, movement.number), sealed ? 'start' : 'hold-to-run'),
      };
    });
    const stop = sealed ? addButton(board, `Stop ${lower(movement.thing)}`, 'stop') : undefined;
    const limits: ActuatedPart[] = [];
    sides.forEach(({ way, coil, button }, index) => {
      const other = sides[1 - index]!;
      const series: Step[] = [other.coil.rest()];
      // At size 4 and above the buttons lock each other out as well.
      if (size >= 4) series.push(other.button.rest());
      if (size >= 3) {
        const limit = addSensor(board, 'limit', numbered(way.there, movement.number));
        series.push(limit.rest());
        limits.push(limit);
      }
      const command = sealed ? either(...random.shuffle([[button.made()], [coil.made()]])) : button.made();
      const chain = [...random.shuffle(series), command];
      board.line(source, 'control', [
        ...(stop ? [stop.rest()] : []),
        ...(random.chance(0.5) ? chain : [chain.at(-1)!, ...chain.slice(0, -1)]),
        coil.coil,
      ]);
      const lamp = addLamp(board, source, numbered(way.doing, movement.number), 'normal');
      board.line(source, 'lamps', [coil.made(), lamp.hop]);
    });
    if (size >= 5) {
      limits.forEach((limit, index) => {
        const lamp = addLamp(board, source, numbered(sides[index]!.way.there, movement.number), 'neutral');
        board.line(source, 'lamps', [limit.made(), lamp.hop]);
      });
    }
    if (size >= 6) {
      const [one, other] = sides;
      const warning = addSounder(board, source, 'Travel warning');
      board.line(source, 'control', [either([one!.coil.made()], [other!.coil.made()]), warning.hop]);
    }
    maybeSupplyLamp(random, opening);

    const [one, other] = random.shuffle(sides);
    const [first, second] = [one!.button.toggle, other!.button.toggle];
    const oneLimit = limits[sides.indexOf(one!)];
    const otherLimit = limits[sides.indexOf(other!)];
    const shapes: (() => Act[])[] = [
      () => [first.on],
      () => pulse(first),
      () => [first.on, second.on],
      () => [...pulse(first), ...pulse(second)],
      () => [first.on, second.on, first.off],
      ...(stop ? [() => [...pulse(first), ...pulse(stop.toggle), ...pulse(second)]] : []),
      ...(oneLimit
        ? [
            () => [...pulse(first), oneLimit.toggle.on],
            () => [oneLimit.toggle.on, ...pulse(first)],
            () => [...pulse(first), oneLimit.toggle.on, ...pulse(second)],
            () => [otherLimit!.toggle.on, ...pulse(first)],
          ]
        : []),
    ];
    return finish(random, board, {
      family: interlocked.id,
      title: titleOf(plant, movement.thing, 'two directions locked against each other'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
