import type { Step } from '../../../shared/circuit.ts';
import type { Act } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import { cast, lower, numbered, titleOf } from '../casting.ts';
import { either } from '../chains.ts';
import { addButton, addContactor, addLamp, addRelay, addSensor, addSounder } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { ActuatedPart, Toggle } from '../parts.ts';
import type { Random } from '../random.ts';
import type { Family } from '../types.ts';
import type { Movement } from '../vocabulary/index.ts';

/** What travels or lifts is drawn with its limits; where there are none, it is something that turns without an end. */
function motionAt(random: Random, size: number): Movement['motion'] {
  if (size < 3) return 'turns';
  // What is moved by hand alone remembers nothing, so there is less to read in it.
  return random.chance(0.15) ? 'lifts' : 'travels';
}

/** Two directions, each kept out by a break contact of the other: the first one wins. */
export const interlocked: Family = {
  id: 'interlocked',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const wanted = motionAt(random, size);
    const movement = cast(
      random,
      plant.movements.filter(({ motion }) => motion === wanted),
    );
    const sealed = size >= 2 && movement.motion !== 'lifts';
    const contactors = random.chance(0.5);
    const sides = movement.ways.map((way) => {
      const coil = contactors
        ? addContactor(board, source, 3, 2, { mains: 3, text: numbered(way.doing, movement.number) })
        : addRelay(board, source, { poles: 4, text: numbered(way.doing, movement.number) });
      // What is held by its button has one more of it where more stands in its way.
      const stations = size >= 4 && !sealed ? ['', ', station 2'] : [''];
      const buttons = stations.map((station) =>
        addButton(
          board,
          `${numbered(way.button, movement.number)}${station}`,
          sealed ? 'start' : 'hold-to-run',
        ),
      );
      return { way, coil, buttons };
    });
    const stop = size >= 2 ? addButton(board, `Stop ${lower(movement.thing)}`, 'stop') : undefined;
    const limits: ActuatedPart[] = [];
    sides.forEach(({ way, coil, buttons }, index) => {
      const other = sides[1 - index]!;
      const series: Step[] = [other.coil.rest()];
      // At size 4 and above the buttons lock each other out as well.
      if (size >= 4) series.push(...other.buttons.map((button) => button.rest()));
      if (way.there !== undefined) {
        const limit = addSensor(board, 'limit', numbered(way.there, movement.number));
        series.push(limit.rest());
        limits.push(limit);
      }
      const commands = [...buttons.map((button) => button.made()), ...(sealed ? [coil.made()] : [])];
      const command = either(...random.shuffle(commands).map((contact) => [contact]));
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
        const lamp = addLamp(board, source, numbered(sides[index]!.way.there!, movement.number), 'neutral');
        board.line(source, 'lamps', [limit.made(), lamp.hop]);
      });
    }
    if (size >= 6) {
      const [one, other] = sides;
      const moving = addRelay(board, source, { poles: 3, text: `${movement.thing} moving` });
      board.line(source, 'control', [either([one!.coil.made()], [other!.coil.made()]), moving.coil]);
      const warning = addSounder(board, source, 'Travel warning');
      board.line(source, 'control', [moving.made(), warning.hop]);
    }
    maybeSupplyLamp(random, opening);

    const [one, other] = random.shuffle(sides);
    const [first, second] = [one!, other!].map(({ buttons }) => random.pick(buttons).toggle) as [
      Toggle,
      Toggle,
    ];
    const go = (toggle: Toggle): Act[] => (sealed ? pulse(toggle) : [toggle.on]);
    const oneLimit = limits[sides.indexOf(one!)];
    const otherLimit = limits[sides.indexOf(other!)];
    const shapes: (() => Act[])[] = [
      () => [first.on],
      () => pulse(first),
      () => [first.on, second.on],
      () => [...go(first), ...go(second)],
      () => [...pulse(first), ...go(second)],
      () => [first.on, second.on, first.off],
      ...(stop ? [() => [...go(first), ...pulse(stop.toggle), ...go(second)]] : []),
      ...(oneLimit
        ? [
            () => [...go(first), oneLimit.toggle.on],
            () => [oneLimit.toggle.on, ...go(first)],
            () => [...go(first), oneLimit.toggle.on, ...go(second)],
            () => [otherLimit!.toggle.on, ...go(first)],
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
