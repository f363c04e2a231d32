import type { Paper } from '../../shared/homework.ts';
import { circuitsTold } from '../questions/index.ts';

/** The circuits that tell something of a paper's answers, with the index of the item that each belongs to. */
export const guardedCircuits = ({ items }: Paper): ReadonlyMap<string, number> =>
  new Map(
    items.flatMap(({ question }, index) =>
      circuitsTold(question).map((circuit) => [circuit, index] as const),
    ),
  );
