import { poleMechanism, type Run, type Survey } from '../parts/index.ts';
import type { Levels } from './levels.ts';

/** Neighbouring columns' poles that one hand, trip or armature moves and that belong side by side. */
export function findLinks(drawn: Survey, columns: readonly Run[], levels: Levels): number[][] {
  const links: number[][] = [];
  const open = new Map<string, { column: number; parts: number[] }>();
  columns.forEach((run, column) => {
    for (const { part } of run.parts) {
      const mechanism = poleMechanism(drawn.parts[part]);
      if (!mechanism) continue;
      const last = open.get(mechanism);
      const near =
        last?.column === column - 1 &&
        Math.abs((levels.row[last.parts[0] as number] as number) - (levels.row[part] as number)) <= 1;
      if (last && near) {
        last.parts.push(part);
        last.column = column;
      } else {
        const parts = [part];
        open.set(mechanism, { column, parts });
        links.push(parts);
      }
    }
  });
  return links.filter((link) => link.length > 1);
}
