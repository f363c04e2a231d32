import type { Found } from '../findings.ts';
import { capital, isInner, loadsOf, type PlacedLoad } from './parts.ts';
import type { Rule } from './rule.ts';

/** Inputs of a controller may be spare; one that is wired needs its common. */
const isSpareInput = ({ load, from }: PlacedLoad, wired: ReadonlySet<string>): boolean =>
  load.role === 'input' && !wired.has(from);

export const loadNotConnected: Rule = {
  name: 'load-not-connected',
  reason: 'Current flows through a coil or load only if it comes in on one side and goes out on the other.',
  source: 'common practice, no source',
  check(_circuit, view) {
    const { of } = view.conductors;
    return loadsOf(view).flatMap((placed): Found[] => {
      if (isSpareInput(placed, view.wired)) return [];
      const { part, load, from, to, words } = placed;
      const ends = isInner(load.to) ? [load.from] : [load.from, load.to];
      const bare = ends.filter((end) => !view.wired.has(end === load.from ? from : to));
      const concern = { kind: 'device', index: part.index, terminal: bare[0] ?? load.from } as const;
      if (bare.length > 0) {
        return [
          {
            message: `${capital(words)} is not connected at ${bare.join(' and ')}.`,
            hint: `Join ${bare.map((end) => `${part.device.name}:${end}`).join(' and ')} to a conductor: one side leads to each pole of its supply.`,
            concern,
          },
        ];
      }
      if (isInner(load.to) || of.get(from) !== of.get(to)) return [];
      return [
        {
          message: `${capital(words)} has both sides on the same conductor.`,
          hint: 'Join its two sides to the two poles of its supply; no current flows between equal voltages.',
          concern,
        },
      ];
    });
  },
};
