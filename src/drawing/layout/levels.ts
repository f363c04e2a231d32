/**
 * Which row each part stands in, and in which channel each conductor runs. Channel h lies above row h; row h is
 * between channels h and h + 1. Feeding poles run in channel 0, return poles in the last.
 */
import { isLoad, isPolyphase, type Run, type Survey } from '../parts/index.ts';
import { isAbove } from '../parts/survey.ts';

export interface Levels {
  /** By part; -1 for parts that do not stand here. */
  readonly row: Int32Array;
  /** By net; -1 for nets that do not run here. */
  readonly channel: Int32Array;
  /** How many rows; the last channel has this number. */
  readonly rows: number;
}

/** Parts that stand in one row because one mechanism links them. */
export type Links = readonly (readonly number[])[];

interface Here {
  readonly drawn: Survey;
  readonly runs: readonly Run[];
  readonly parts: readonly number[];
  readonly here: Uint8Array;
  /** Part before it in its run that it must keep a row's distance from, or -1. */
  readonly apart: Int32Array;
  readonly least: Int32Array;
}

const portsOf = (drawn: Survey, part: number): readonly number[] => drawn.portsOf[part] ?? [];

/** Longest way down from the feeding poles; what would close a circle is left out (the router leads it round). */
function descend({ drawn, runs, parts, here, apart, least }: Here): { row: Int32Array; channel: Int32Array } {
  const { wiring, poles } = drawn;
  const row = new Int32Array(drawn.parts.length).fill(-1);
  const channel = new Int32Array(wiring.nets.length).fill(-1);
  const busy = new Uint8Array(drawn.parts.length);
  const busyNet = new Uint8Array(wiring.nets.length);
  const channelOf = (net: number): number => {
    if (channel[net] !== -1 || busyNet[net]) return Math.max(0, channel[net] as number);
    if (poles.feeds.has(net) || poles.returns.has(net)) {
      channel[net] = 0;
      return 0;
    }
    busyNet[net] = 1;
    let level = 0;
    for (const port of wiring.nets[net]?.ports ?? []) {
      const part = wiring.partOfPort[port] as number;
      if (here[part] && !isAbove(drawn, port)) level = Math.max(level, rowOf(part) + 1);
    }
    channel[net] = level;
    busyNet[net] = 0;
    return level;
  };
  const rowOf = (part: number): number => {
    if (row[part] !== -1 || busy[part]) return row[part] as number;
    busy[part] = 1;
    let level = least[part] as number;
    for (const port of portsOf(drawn, part))
      if (isAbove(drawn, port)) level = Math.max(level, channelOf(wiring.netOfPort[port] as number));
    const before = apart[part] as number;
    if (before >= 0) level = Math.max(level, rowOf(before) + 2);
    row[part] = level;
    busy[part] = 0;
    return level;
  };
  for (const part of parts) rowOf(part);
  // Whatever was left out, the parts of a run stand one under another.
  for (const run of runs)
    run.parts.forEach(({ part }, index) => {
      const before = run.parts[index - 1]?.part;
      if (before === undefined) return;
      const step = apart[part] === before ? 2 : 1;
      row[part] = Math.max(row[part] as number, (row[before] as number) + step);
    });
  channel.fill(-1);
  for (const part of parts)
    for (const port of portsOf(drawn, part)) channelOf(wiring.netOfPort[port] as number);
  return { row, channel };
}

/** Nets from which only the return pole, and no load, is still to come. */
function returnSide({ drawn, here }: Here): (net: number) => boolean {
  const { wiring, poles } = drawn;
  const known = new Map<number, boolean>();
  const check = (net: number): boolean => {
    const before = known.get(net);
    if (before !== undefined) return before;
    if (poles.returns.has(net)) return true;
    if (poles.feeds.has(net)) return false;
    known.set(net, false);
    let answer = true;
    for (const port of wiring.nets[net]?.ports ?? []) {
      const part = wiring.partOfPort[port] as number;
      if (!here[part] || !isAbove(drawn, port)) continue;
      const lower = portsOf(drawn, part).filter((other) => !isAbove(drawn, other));
      answer &&=
        !isLoad(drawn.parts[part]?.form ?? 'make') &&
        lower.length > 0 &&
        lower.every((other) => check(wiring.netOfPort[other] as number));
    }
    known.set(net, answer);
    return answer;
  };
  return check;
}

/**
 * In a run, two parts one under the other that both have a leg on the same side line and different conductors
 * on them would draw over each other there: they keep an empty row between. So do two that no conductor joins.
 */
function keptApart(drawn: Survey, runs: readonly Run[]): Int32Array {
  const apart = new Int32Array(drawn.parts.length).fill(-1);
  for (const run of runs)
    run.parts.forEach((item, index) => {
      const next = run.parts[index + 1];
      if (!next) return;
      const many = (part: number, above: boolean): boolean =>
        portsOf(drawn, part).filter((port) => isAbove(drawn, port) === above).length > 1;
      const parted = index + 1 === run.joined;
      if (parted || (many(item.part, false) && many(next.part, true))) apart[next.part] = item.part;
    });
  return apart;
}

export function findLevels(drawn: Survey, runs: readonly Run[], links: Links): Levels {
  const parts = runs.flatMap((run) => run.parts.map(({ part }) => part));
  const here = new Uint8Array(drawn.parts.length);
  for (const part of parts) here[part] = 1;
  const least = new Int32Array(drawn.parts.length);
  const base: Here = { drawn, runs, parts, here, least, apart: keptApart(drawn, runs) };
  const onReturn = returnSide(base);
  const last = parts.filter(
    (part) =>
      isLoad(drawn.parts[part]?.form ?? 'make') &&
      !isPolyphase(drawn.parts[part]?.form ?? 'make') &&
      portsOf(drawn, part).every(
        (port) => isAbove(drawn, port) || onReturn(drawn.wiring.netOfPort[port] as number),
      ),
  );
  let found = loadsInOneRow(base, last);
  for (const link of links) found = linked(base, last, link, found);
  const rows = Math.max(0, ...parts.map((part) => (found.row[part] as number) + 1));
  for (const net of drawn.poles.returns) if (found.channel[net] !== -1) found.channel[net] = rows;
  return { ...found, rows };
}

type Found = ReturnType<typeof descend>;

const sameRow = ({ row }: Found, parts: readonly number[]): boolean =>
  parts.every((part) => row[part] === row[parts[0] as number]);

/** The loads at the return side stand in the row of the lowest of them; a motor close under what feeds it. */
function loadsInOneRow(here: Here, loads: readonly number[]): Found {
  let found = descend(here);
  for (let round = 0; round < 3 && !sameRow(found, loads); round++) {
    const row = Math.max(...loads.map((part) => found.row[part] as number));
    for (const part of loads) here.least[part] = row;
    found = descend(here);
  }
  return found;
}

/** Rows that a link may push the drawing down by before it is given up. */
const LINK_ROWS = 1;

/** Brings the parts of a link into one row; where that would pull others apart or stretch the drawing, it is left. */
function linked(here: Here, loads: readonly number[], link: readonly number[], found: Found): Found {
  if (sameRow(found, link)) return found;
  const before = here.least.slice();
  const height = ({ row }: Found): number =>
    here.parts.reduce((most, part) => Math.max(most, row[part] as number), 0);
  let tried = found;
  for (let round = 0; round < 3 && !sameRow(tried, link); round++) {
    const row = Math.max(...link.map((part) => tried.row[part] as number));
    for (const part of link) here.least[part] = Math.max(here.least[part] as number, row);
    tried = loadsInOneRow(here, loads);
  }
  if (sameRow(tried, link) && height(tried) <= height(found) + LINK_ROWS) return tried;
  here.least.set(before);
  return found;
}
