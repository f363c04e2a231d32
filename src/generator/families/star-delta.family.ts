import type { Act } from '../../../shared/scenario.ts';
import { pulse, severalLists } from '../act-lists.ts';
import type { Board } from '../board.ts';
import { cast, lower, titleOf } from '../casting.ts';
import { either, startOf } from '../chains.ts';
import { addButton, addContactor, addLamp, addOnDelay, addOverload, addRelay } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Source } from '../parts.ts';
import { directMotor, starDeltaMotor } from '../three-phase.ts';
import { long, pickSeconds, short } from '../timing.ts';
import type { Family } from '../types.ts';

/**
 * A fan with a motor of its own that cools the motor for as long as this runs, on a breaker of its own. Without it the motor would grow
 * too hot, so its overload stops both.
 */
function coolingFan(board: Board, source: Source, mains: string) {
  const contactor = addContactor(board, source, 2, 1, { mains: 3, text: 'Cooling fan' });
  const overload = addOverload(board, 'Cooling fan overload');
  directMotor(board, mains, 'Cooling fan', { contactor, overload: overload.mains });
  const lamp = (): void => {
    const tripped = addLamp(board, source, 'Cooling fan tripped', 'abnormal');
    board.line(source, 'lamps', [overload.made, tripped.hop]);
  };
  return { contactor, overload, lamp };
}

/** The power paths, and what moves them. */
function starter(board: Board, source: Source, thing: string, cooled: boolean) {
  const main = addContactor(board, source, 3, 1, { mains: 3, text: `${thing} main` });
  const star = addContactor(board, source, 2, 2, { mains: 3, text: `${thing} star` });
  const delta = addContactor(board, source, 3, 3, { mains: 3, text: `${thing} delta` });
  const overload = addOverload(board, `${thing} overload`);
  const mains = starDeltaMotor(board, thing, { main, star, delta, overload: overload.mains });
  return { main, star, delta, overload, fan: cooled ? coolingFan(board, source, mains) : undefined };
}

/**
 * Main and star contactor first, after the timer's time star opens and delta closes; each locks the other out. In star each
 * winding has 58 % of its voltage and the line a third of the delta current.
 */
export const starDelta: Family = {
  id: 'star-delta',
  size: { min: 1, max: 4 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const drive = cast(
      random,
      plant.drives.filter(({ startsUnloaded }) => startsUnloaded),
    );
    const seconds = pickSeconds(random);
    const { main, star, delta, overload, fan } = starter(board, source, drive.thing, size >= 2);

    const timer = addOnDelay(board, source, seconds, { poles: 1, text: 'Star time' });
    const start = addButton(board, `Start ${lower(drive.thing)}`, 'start');
    const stop = addButton(board, `Stop ${lower(drive.thing)}`, 'stop');
    const held = either(...random.shuffle([[start.made()], [main.made()]]));
    const stopping = [overload.rest, stop.rest(), ...(fan ? [fan.overload.rest] : [])];
    board.line(source, 'control', [...random.shuffle(stopping), held, main.coil]);
    const run = startOf(main.coil);
    if (fan) board.tail([fan.contactor.coil], run);
    const pole = timer.pole();
    board.tail([pole.rest, delta.rest(), star.coil], run);
    // The timer's make leg starts at the same common.
    const ready = size >= 3 ? addRelay(board, source, { poles: 2, text: 'May be loaded' }) : undefined;
    const toDelta = ready ? either([pole.made], [delta.made()]) : pole.made;
    board.tail([toDelta, star.rest(), delta.coil], startOf(pole.made));
    // From size 3 delta holds itself, and what follows it takes the timer out.
    board.tail([...(ready ? [ready.rest()] : []), timer.coil], run);
    if (ready) {
      board.line(source, 'control', [delta.made(), ready.coil]);
      if (size >= 4) {
        const loaded = addLamp(board, source, `${drive.thing} may be loaded`, 'normal');
        board.line(source, 'lamps', [ready.made(), loaded.hop]);
      }
    }

    const inStar = addLamp(board, source, `${drive.thing} starting`, 'neutral');
    board.line(source, 'lamps', [star.made(), inStar.hop]);
    const inDelta = addLamp(board, source, `${drive.thing} ${drive.running}`, 'normal');
    board.line(source, 'lamps', [delta.made(), inDelta.hop]);
    const off = addLamp(board, source, `${drive.thing} stopped`, 'neutral');
    board.line(source, 'lamps', [main.rest(), off.hop]);
    if (fan) {
      const tripped = addLamp(board, source, `${drive.thing} tripped`, 'abnormal');
      board.line(source, 'lamps', [overload.made, tripped.hop]);
      fan.lamp();
    }
    maybeSupplyLamp(random, opening);
    const go = pulse(start.toggle);
    const halt = pulse(stop.toggle);
    const shapes: (() => Act[])[] = [
      () => go,
      () => [...go, short(random, seconds)],
      () => [...go, long(random, seconds)],
      () => [...go, long(random, seconds), ...halt],
      () => [...go, short(random, seconds), ...halt, ...go, short(random, seconds)],
      () => [...go, long(random, seconds), overload.toggle.on],
      () => [...go, short(random, seconds), overload.toggle.on, overload.toggle.off],
      () => [start.toggle.on, long(random, seconds)],
      ...(fan ? [() => [...go, short(random, seconds), fan.overload.toggle.on]] : []),
    ];
    return finish(random, board, {
      family: starDelta.id,
      title: titleOf(plant, drive.thing, 'star-delta start'),
      sheets: Math.max(2, sheetsFor(random, size + 2)),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
