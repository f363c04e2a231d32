import type { Act } from '../../../shared/scenario.ts';
import { severalLists } from '../act-lists.ts';
import { cast, numbered, titleOf } from '../casting.ts';
import { type Chain, either } from '../chains.ts';
import { addContactor, addLamp, addOverload, addRelay, addSensor, addSounder } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import { statusLamps } from '../status-lamps.ts';
import type { Family } from '../types.ts';

/**
 * The high float starts the pump, the low float stops it; between the floats the pump does what it did before. Both floats
 * are drawn with the pit empty and make as the water lifts them.
 */
export const pumpOut: Family = {
  id: 'pump-out',
  size: { min: 1, max: 5 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const sump = cast(random, plant.sumps);
    const pumpName = numbered(sump.pump, sump.number);
    const low = addSensor(board, 'float', `${sump.thing} above low level`);
    const high = addSensor(board, 'float', `${sump.thing} above high level`);
    const pump =
      size >= 4 && random.chance(0.5)
        ? addContactor(board, source, 4, 2, { mains: 3, text: pumpName })
        : addRelay(board, source, { poles: random.int(size >= 5 ? 4 : 3, 4), text: pumpName });
    const series: Chain[number][] = [low.made(), either(...random.shuffle([[high.made()], [pump.made()]]))];
    const overload = size >= 3 ? addOverload(board, `${pumpName} overload`) : undefined;
    if (overload) series.push(overload.rest);
    board.line(source, 'control', [...random.shuffle(series), pump.coil]);
    const running = addLamp(board, source, `${pumpName} running`, 'normal');
    const standing = addLamp(board, source, `${pumpName} stopped`, 'neutral');
    statusLamps(random, opening, pump, { running, standing });
    if (size >= 2) {
      const level = addLamp(board, source, `${sump.thing} above low level`, 'neutral');
      board.line(source, 'lamps', [low.made(), level.hop]);
    }
    const alarm = size >= 4 ? addSensor(board, 'float', `${sump.thing} at alarm level`) : undefined;
    if (alarm) {
      const flooded = addLamp(board, source, `${sump.thing} flooded`, 'emergency');
      board.line(source, 'lamps', [alarm.made(), flooded.hop]);
    }
    if (overload && (size >= 5 || random.chance(0.5))) {
      const tripped = addLamp(board, source, `${pumpName} tripped`, 'abnormal');
      board.line(source, 'lamps', [overload.made, tripped.hop]);
    }
    if (size >= 5) {
      const horn = addSounder(board, source, 'Flood horn');
      const ways = random.shuffle([[alarm!.made()], [...random.shuffle([high.made(), pump.rest()])]]);
      board.line(source, 'control', [either(...ways), horn.hop]);
    }
    maybeSupplyLamp(random, opening);
    const rise: Act[] = [low.toggle.on, high.toggle.on];
    const shapes: (() => Act[])[] = [
      () => [low.toggle.on],
      () => rise,
      () => [...rise, high.toggle.off],
      () => [...rise, high.toggle.off, low.toggle.off],
      () => [...rise, high.toggle.off, low.toggle.off, low.toggle.on],
      ...(overload
        ? [
            () => [...rise, overload.toggle.on],
            () => [...rise, high.toggle.off, overload.toggle.on, overload.toggle.off],
          ]
        : []),
      ...(alarm
        ? [() => [...rise, alarm.toggle.on], () => [...rise, alarm.toggle.on, alarm.toggle.off]]
        : []),
    ];
    return finish(random, board, {
      family: pumpOut.id,
      title: titleOf(plant, sump.thing, 'pumped out between two floats'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => random.pick(shapes)()),
    });
  },
};
