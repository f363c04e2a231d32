import type { Act } from '../../../shared/scenario.ts';
import { severalLists } from '../act-lists.ts';
import { cast, titleOf } from '../casting.ts';
import { either } from '../chains.ts';
import { addButton, addEmergencyStop, addLamp, addOnDelay, addRelay, addValve } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import { wait } from '../timing.ts';
import type { Family } from '../types.ts';

/**
 * Two buttons pressed within half a second of one another, held, and both let go before the next stroke: the timing of
 * ISO 13851, type III. A drawing to read; a real press has an approved module for it.
 */
export const twoHand: Family = {
  id: 'two-hand',
  size: { min: 1, max: 4 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const drive = cast(random, plant.twoHand);
    const left = addButton(board, `${drive.thing} left hand`, 'hold-to-run');
    const right = addButton(board, `${drive.thing} right hand`, 'hold-to-run');
    const late = addOnDelay(board, source, 0.5, { poles: 2, text: 'Too late' });
    const acts = addRelay(board, source, {
      poles: random.int(size >= 4 ? 4 : size >= 2 ? 3 : 2, 4),
      text: drive.thing,
    });
    board.line(source, 'control', [either(...random.shuffle([[left.made()], [right.made()]])), late.coil]);
    const both = [left.made(), right.made()];
    const window = either(...random.shuffle([[late.rest()], [acts.made()]]));
    const stop = size >= 3 ? [addEmergencyStop(board, 'Emergency stop')] : [];
    board.line(source, 'control', [
      ...random.shuffle([...stop.map((button) => button.rest()), ...both, window]),
      acts.coil,
    ]);
    const pole = acts.pole();
    const running = addLamp(board, source, `${drive.thing} ${drive.running}`, 'normal');
    const standing = addLamp(board, source, `${drive.thing} at rest`, 'neutral');
    board.line(source, 'lamps', [pole.made, running.hop]);
    board.tail([pole.rest, standing.hop]);
    if (size >= 2) {
      const blocked = addLamp(board, source, `${drive.thing}: let both go`, 'mandatory');
      board.line(source, 'lamps', [...random.shuffle([late.made(), acts.rest()]), blocked.hop]);
    }
    if (size >= 4) {
      const valve = addValve(board, source, `${drive.thing} valve`);
      board.line(source, 'control', [acts.made(), valve.hop]);
      const hand = addLamp(board, source, `${drive.thing}: a hand is on`, 'neutral');
      board.line(source, 'lamps', [either([left.made()], [right.made()]), hand.hop]);
    }
    maybeSupplyLamp(random, opening);
    const [one, other] = random.shuffle([left.toggle, right.toggle]);
    const soon = wait(0.2);
    const tooLate = wait(random.pick([1, 2]));
    const shapes: (() => Act[])[] = [
      () => [one!.on, other!.on],
      () => [one!.on, soon, other!.on],
      () => [one!.on, tooLate, other!.on],
      () => [one!.on, soon, other!.on, tooLate],
      () => [one!.on, soon, other!.on, tooLate, other!.off],
      () => [one!.on, other!.on, tooLate, other!.off, other!.on],
      () => [one!.on, tooLate, other!.on, one!.off, other!.off, one!.on, other!.on],
      ...stop.map(({ toggle }) => () => [one!.on, other!.on, tooLate, toggle.on, toggle.off]),
    ];
    return finish(random, board, {
      family: twoHand.id,
      title: titleOf(
        plant,
        drive.thing,
        'two-hand control, to read: a real one has a monitored module (ISO 13851)',
      ),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
