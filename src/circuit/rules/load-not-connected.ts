import { isInner, loadsOf, type PlacedLoad } from './parts.ts';
import type { Broken, DrawingRule } from './rule.ts';

/** Inputs of a controller may be spare; one that is wired needs its common. */
const isSpareInput = ({ load, from }: PlacedLoad, wired: ReadonlySet<string>): boolean =>
  load.role === 'input' && !wired.has(from);

export const loadNotConnected: DrawingRule = {
  name: 'load-not-connected',
  check(_circuit, view) {
    const { of } = view.conductors;
    return loadsOf(view).flatMap((placed): Broken[] => {
      if (isSpareInput(placed, view.wired)) return [];
      const { part, load, from, to, named } = placed;
      const ends = isInner(load.to) ? [load.from] : [load.from, load.to];
      const bare = ends.filter((end) => !view.wired.has(end === load.from ? from : to));
      const concern = { kind: 'device', index: part.index, terminal: bare[0] ?? load.from } as const;
      if (bare.length > 0) {
        const { name } = part.device;
        return [{ said: { says: 'load-not-connected', load: named, name, bare }, concern }];
      }
      if (isInner(load.to) || of.get(from) !== of.get(to)) return [];
      return [{ said: { says: 'load-not-connected.bridged', load: named }, concern }];
    });
  },
};
