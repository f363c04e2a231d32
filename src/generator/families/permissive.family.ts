import type { Step } from '../../../shared/circuit.ts';
import { randomActs, severalLists } from '../act-lists.ts';
import { cast, numbered, titleOf } from '../casting.ts';
import { type Chain, either } from '../chains.ts';
import { addLamp, addRelay, addSelector, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Random } from '../random.ts';
import type { Family } from '../types.ts';
import type { Plant } from '../vocabulary/index.ts';

/**
 * A machine, some of its conditions, and the one of them that is passed over while it is set up, at sizes that have this. That
 * hurts nobody and lets nothing go: it is never a guard, a mooring or an end of travel (IEC 60204-1, 9.2.4, from memory).
 */
function chainFor(random: Random, plant: Plant, size: number) {
  const setsUp = size >= 5;
  const { thing, number, may, mayNot, conditions } = cast(
    random,
    plant.chains.filter(
      (chain) =>
        chain.conditions.length >= Math.min(size + 1, 6) &&
        (!setsUp || chain.conditions.some(({ passable }) => passable)),
    ),
  );
  const passed = setsUp ? random.pick(conditions.filter(({ passable }) => passable)) : undefined;
  const others = conditions.filter((condition) => condition !== passed);
  const count = Math.min(size + 1, conditions.length);
  const chosen = random.sample(others, passed ? count - 1 : count);
  return {
    thing,
    mayRun: numbered(may, number),
    mayNotRun: numbered(mayNot, number),
    chosen: random.shuffle(passed ? [passed, ...chosen] : chosen),
    passed,
  };
}

/**
 * Every condition in one series: any open contact stops it. A contact is drawn unactuated, so what has to be there first
 * (pressure, a shut door) is a make, and what must not come (a trip, a full bin) is a break.
 */
export const permissive: Family = {
  id: 'permissive',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const { thing, mayRun, mayNotRun, chosen, passed } = chainFor(random, plant, size);
    const conditions = chosen.map((condition) => {
      const sensor = addSensor(board, condition.sensor, condition.actedBy);
      const contact = condition.well === 'acted' ? sensor.made() : sensor.rest();
      return { condition, sensor, contact };
    });
    const ready = addRelay(board, source, { poles: 4, text: mayRun });
    const series: Chain[number][] = conditions.map(({ contact }) => contact);
    const bypass = passed && addSelector(board, 'Setting up', ['Off', 'On'], [['On']]);
    if (bypass) {
      const at = conditions.findIndex(({ condition }) => condition === passed);
      series[at] = either([series[at] as Step], [bypass.hops[0]!]);
    }
    board.line(source, 'control', [...series, ready.coil]);
    const may = addLamp(board, source, mayRun, 'normal');
    board.line(source, 'lamps', [ready.made(), may.hop]);
    const stopped = addLamp(board, source, mayNotRun, 'abnormal');
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
      title: titleOf(plant, thing, 'permissive chain'),
      sheets: sheetsFor(random, size),
      acts: severalLists(5, () => {
        const well = random.shuffle(coming).map(({ on }) => on);
        switch (random.int(0, 5)) {
          case 0:
            return well;
          case 1:
            return [...well, going.length > 0 ? random.pick(going).on : random.pick(coming).off];
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
