import type { Act } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import { cast, lower, titleOf } from '../casting.ts';
import { either, endOf } from '../chains.ts';
import { addButton, addLamp, addRelay, addValve } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import { statusLamps } from '../status-lamps.ts';
import type { Family } from '../types.ts';

/**
 * Jogging beside start and stop: a jog relay drives the machine while its button is held and keeps the seal open, so that
 * nothing is caught however fast the button is let go. The stop stands before start, seal and jog alike (IEC 60204-1, 9.2).
 */
export const jog: Family = {
  id: 'jog',
  size: { min: 1, max: 5 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const drive = cast(
      random,
      plant.drives.filter(({ jogs }) => jogs),
    );
    const main = addRelay(board, source, { poles: random.int(3, 4), text: drive.thing });
    const jogs = Array.from({ length: size >= 3 ? 2 : 1 }, (_, index) =>
      addButton(board, `Jog ${lower(drive.thing)}${index === 0 ? '' : ' from far end'}`, 'hold-to-run'),
    );
    const stop = addButton(board, `Stop ${lower(drive.thing)}`, 'stop');
    const start = addButton(board, `Start ${lower(drive.thing)}`, 'start');
    const running = addLamp(board, source, `${drive.thing} ${drive.running}`, 'normal');

    if (size === 1) {
      // The plain way: the jog button's break contact opens the seal, its make contact feeds the coil.
      const [button] = jogs;
      const seal = random.shuffle([button!.rest(), main.made()]);
      const ways = random.shuffle([[start.made()], seal, [button!.made()]]);
      board.line(source, 'control', [stop.rest(), either(...ways), main.coil]);
    } else {
      const hold = addRelay(board, source, { poles: random.int(3, 4), text: `${drive.thing}: run` });
      const jogging = addRelay(board, source, { poles: random.int(3, 4), text: `${drive.thing}: jog` });
      // The stop stands before all of it, the jog too: pressed, it stops whatever is held.
      const stopped = stop.rest();
      board.line(source, 'control', [
        stopped,
        ...random.shuffle([jogging.rest(), either(...random.shuffle([[start.made()], [hold.made()]]))]),
        hold.coil,
      ]);
      board.tail([either(...jogs.map((button) => [button.made()])), jogging.coil], endOf(stopped));
      board.tail([either(...random.shuffle([[hold.made()], [jogging.made()]])), main.coil], endOf(stopped));
      const jogLamp = addLamp(board, source, `${drive.thing} jogging`, 'neutral');
      board.line(source, 'lamps', [jogging.made(), jogLamp.hop]);
      if (size >= 4) {
        const holdLamp = addLamp(board, source, `${drive.thing} started`, 'normal');
        board.line(source, 'lamps', [hold.made(), holdLamp.hop]);
      }
    }
    const standing = addLamp(board, source, `${drive.thing} stopped`, 'neutral');
    statusLamps(random, opening, main, { running, standing });
    if (size >= 5) {
      const brake = addValve(board, source, 'Brake release valve');
      board.line(source, 'control', [main.made(), brake.hop]);
    }
    maybeSupplyLamp(random, opening);

    const hold = (): Act => random.pick(jogs).toggle.on;
    const tap = (): Act[] => pulse(random.pick(jogs).toggle);
    const go = pulse(start.toggle);
    const shapes: (() => Act[])[] = [
      () => [hold()],
      tap,
      () => go,
      () => [...go, hold()],
      () => [...go, ...tap()],
      () => [start.toggle.on, hold()],
      () => [...tap(), ...go],
      () => [...go, ...pulse(stop.toggle), hold()],
      () => [stop.toggle.on, hold()],
    ];
    return finish(random, board, {
      family: jog.id,
      title: titleOf(plant, drive.thing, 'jog, start and stop'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
