/** A rule of practice that has to be solved: a lamp for several things shows that all is well only while all of them are. */

import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actSaid, type DrawingRule } from '../circuit/index.ts';
import { plantOf } from './plant.ts';
import { plantActs } from './plant-contacts.ts';
import { afterAll } from './plant-walk.ts';
import { type Shown, ShownLamps } from './shown-lamps.ts';

interface Wrong {
  readonly lamp: string;
  readonly warning: string;
  readonly act: Act;
}

function wrongIn(circuit: Circuit, lamps: ShownLamps): readonly Wrong[] {
  const { machine, start } = plantOf(circuit);
  const rest = lamps.in(machine, start);
  if (rest.well.size === 0) return [];
  const after = (acts: readonly Act[]): Shown | undefined => {
    const state = afterAll(machine, start, acts);
    return state && lamps.in(machine, state);
  };
  /** Each thing that goes wrong and is shown, with the lamps that stay green all the same. */
  const alone = plantActs(circuit).flatMap((act) => {
    const shown = after([act]);
    const [warning] = [...(shown?.warning ?? [])].filter((id) => !rest.warning.has(id));
    const green = [...rest.well].filter((id) => shown?.well.has(id));
    return warning === undefined || green.length === 0 ? [] : [{ act, warning, green }];
  });
  const found = new Map<string, Wrong>();
  alone.forEach((one, index) => {
    for (const other of alone.slice(index + 1)) {
      const both = one.green.filter((id) => other.green.includes(id) && !found.has(id));
      if (both.length === 0) continue;
      const shown = after([one.act, other.act]);
      for (const lamp of both)
        if (shown && !shown.well.has(lamp)) found.set(lamp, { lamp, warning: one.warning, act: one.act });
    }
  });
  return [...found.values()];
}

/**
 * A green lamp that two things put out only together, although each alone raises a warning: it stays lit beside the warning. A lamp
 * that has to do with one of them only isn't meant by the other.
 */
export const greenMeansWell: DrawingRule = {
  name: 'green-means-well',
  check(circuit) {
    const lamps = new ShownLamps(circuit);
    if (!lamps.any) return [];
    return wrongIn(circuit, lamps).map(({ lamp, warning, act }) => ({
      said: { says: 'green-means-well', lamp, warning, act: actSaid(act, circuit) },
      concern: { kind: 'device', index: circuit.devices.findIndex(({ name }) => name === lamp) },
    }));
  },
};
