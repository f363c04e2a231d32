/** Where a lead can be put on a drawing, or a conductor taken off. */
import type { Scene } from '../../drawing/index.ts';
import type { Spot } from './messages.ts';
import { spotsOf } from './spots.ts';

/** Terminals of one conductor nearer to each other than this are one place: a finger couldn't tell them apart. */
const TOGETHER = 26;

/** By sheet: its terminals that something is connected to, those close together on one conductor as one. */
export function pointsIn({ sheets, conductors }: Scene): readonly (readonly Spot[])[] {
  const netOf = new Map(
    conductors.flatMap((terminals, net) => terminals.map((name) => [name, net] as const)),
  );
  return sheets.map((sheet) => {
    const found: Spot[] = [];
    for (const spot of spotsOf(sheet)) {
      const net = netOf.get(spot.item);
      if (spot.kind !== 'terminal' || net === undefined) continue;
      const near = (other: Spot): boolean =>
        netOf.get(other.item) === net &&
        Math.hypot((spot.x - other.x) * sheet.width, (spot.y - other.y) * sheet.height) < TOGETHER;
      if (!found.some(near)) found.push(spot);
    }
    return found;
  });
}
