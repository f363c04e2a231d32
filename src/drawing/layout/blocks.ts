/** Power paths beside control paths: two drawings in one row, each with rows of its own. */
import { poleMechanism, type Run, type Survey } from '../parts/index.ts';

const hasPhases = ({ circuit, wiring }: Survey): ((net: number) => boolean) => {
  const power = circuit.supplies.filter(({ current }) => current === '3AC').map(({ name }) => `${name}:`);
  return (net) =>
    power.length > 0 &&
    (wiring.nets[net]?.rails.some((rail) => power.some((name) => rail.startsWith(name))) ?? false);
};

/** By column: a number that it shares with every column it is connected to, and whether a three-phase supply feeds these. */
function connected(
  drawn: Survey,
  columns: readonly Run[],
): { readonly group: number[]; readonly power: boolean[] } {
  const group = columns.map((_, column) => column);
  const power = columns.map(() => false);
  const isPhase = hasPhases(drawn);
  const firstOf = new Map<number, number>();
  const join = (one: number, other: number): void => {
    const [from, to] = [group[one] as number, group[other] as number];
    if (from === to) return;
    const either = power[from] === true || power[to] === true;
    group.forEach((root, column) => {
      if (root === from) group[column] = to;
    });
    power[to] = either;
  };
  columns.forEach((run, column) => {
    for (const { part } of run.parts)
      for (const port of drawn.portsOf[part] ?? []) {
        const net = drawn.wiring.netOfPort[port] as number;
        const first = firstOf.get(net);
        if (first === undefined) firstOf.set(net, column);
        else join(column, first);
        if (isPhase(net)) power[group[column] as number] = true;
      }
  });
  return { group, power: group.map((root) => power[root] === true) };
}

const mechanismsOf = (drawn: Survey, run: Run | undefined): Set<string> =>
  new Set((run?.parts ?? []).flatMap(({ part }) => poleMechanism(drawn.parts[part]) ?? []));

/**
 * The columns of a row, parted where power paths meet control paths that no conductor and no dashed line joins them to:
 * neither has to keep its contacts and coils level with the other's.
 */
export function blocksOf(drawn: Survey, columns: readonly Run[]): (readonly Run[])[] {
  if (!drawn.circuit.supplies.some(({ current }) => current === '3AC')) return [columns];
  const { group, power } = connected(drawn, columns);
  const blocks: Run[][] = [];
  columns.forEach((run, column) => {
    const last = blocks[blocks.length - 1];
    const before = columns[column - 1];
    const apart =
      power[column] !== power[column - 1] &&
      !group.slice(column).some((root) => group.indexOf(root) < column) &&
      ![...mechanismsOf(drawn, before)].some((mechanism) => mechanismsOf(drawn, run).has(mechanism));
    if (!last || apart) blocks.push([run]);
    else last.push(run);
  });
  return blocks;
}
