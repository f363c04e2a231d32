import type { Step } from '../../../shared/circuit.ts';
import { randomActs, severalLists } from '../act-lists.ts';
import { cast, titleOf } from '../casting.ts';
import { type Chain, either } from '../chains.ts';
import { addLamp, addRelay, addSelector, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Family } from '../types.ts';

/**
 * Every condition in one series: any open contact stops it. A contact is drawn unactuated, so what has to be there first
 * (pressure, a shut door) is a make, and what must not come (a trip, a full bin) is a break.
 */
export const permissive: Family = {
  id: 'permissive',
  title: 'Permissive chain',
  size: { min: 1, max: 6 },
  about:
    'All conditions in series: any one that fails stops the machine; drawn rest is not running condition.',
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const chain = cast(
      random,
      plant.chains.filter(({ conditions }) => conditions.length >= Math.min(size + 1, 6)),
    );
    const conditions = random
      .sample(chain.conditions, Math.min(size + 1, chain.conditions.length))
      .map((condition) => {
        const sensor = addSensor(board, condition.sensor, condition.text);
        const contact = condition.well === 'acted' ? sensor.made() : sensor.rest();
        return { condition, sensor, contact };
      });
    const ready = addRelay(board, source, { poles: 4, text: `${chain.thing} may run` });
    const series: Chain[number][] = conditions.map(({ contact }) => contact);
    const bypass = size >= 5 ? addSelector(board, 'Setting up', ['Off', 'On'], [['On']]) : undefined;
    if (bypass) {
      const at = random.int(0, series.length - 1);
      series[at] = either([series[at] as Step], [bypass.hops[0]!]);
    }
    board.line(source, 'control', [...series, ready.coil]);
    const may = addLamp(board, source, `${chain.thing} may run`, 'normal');
    board.line(source, 'lamps', [ready.made(), may.hop]);
    const stopped = addLamp(board, source, `${chain.thing} kept off`, 'abnormal');
    board.line(source, 'lamps', [ready.rest(), stopped.hop]);
    if (size >= 3) {
      for (const { condition, sensor } of random.sample(conditions, size >= 4 ? 2 : 1)) {
        const lamp = addLamp(board, source, condition.text, 'normal');
        board.line(source, 'lamps', [condition.well === 'acted' ? sensor.made() : sensor.rest(), lamp.hop]);
      }
    }
    maybeSupplyLamp(random, opening);
    // To have it run, what must be there is there; then something is lost, or nothing is.
    const coming = conditions
      .filter(({ condition }) => condition.well === 'acted')
      .map(({ sensor }) => sensor.toggle);
    const going = conditions
      .filter(({ condition }) => condition.well === 'rest')
      .map(({ sensor }) => sensor.toggle);
    const all = random.shuffle([...coming, ...going]);
    return finish(random, board, {
      family: permissive.id,
      title: titleOf(plant, chain.thing, 'permissive chain'),
      sheets: sheetsFor(random, size),
      acts: severalLists(5, () => {
        const well = random.shuffle(coming).map(({ on }) => on);
        switch (random.int(0, 5)) {
          case 0:
            return well;
          case 1:
            return [...well, random.pick(going.length > 0 ? going : coming).on];
          case 2:
            return [...well, ...(coming.length > 0 ? [random.pick(coming).off] : [])];
          case 3:
            return well.slice(1);
          case 4: {
            if (bypass) return [...well.slice(1), bypass.turn('On')];
            const passing = going[0];
            return passing ? [...well, passing.on, passing.off] : well;
          }
          default:
            return randomActs(random, all, random.int(1, size + 2));
        }
      }),
    });
  },
};
