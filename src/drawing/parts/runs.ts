/** The paths taken apart into runs: what is drawn in one piece of one column, top to bottom. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Wiring } from './nets.ts';
import { isPolyphase, type Part, type Spot } from './part.ts';
import type { Stop, Stops } from './stops.ts';

/** A part in a run. `flipped`: turned over, so that the spots of its upper side are below. */
export interface RunPart {
  readonly part: number;
  /** Port at which the run comes in from above, and goes out below; -1 where it ends here. */
  readonly above: number;
  readonly below: number;
  readonly flipped: boolean;
}

export interface Run {
  readonly index: number;
  readonly path: number;
  readonly sheet: number;
  readonly parts: readonly RunPart[];
  /** Nets at its upper and lower end, -1 for none. */
  readonly head: number;
  readonly foot: number;
  /** How many of its parts are joined one to the next; those after them stand below a neighbour's motor, in the same column. */
  readonly joined: number;
}

/** The net at which the joined parts of a run end. */
export function footOfJoined(run: Run, { netOfPort }: Wiring): number {
  const port = run.parts[run.joined - 1]?.below ?? -1;
  return port < 0 ? -1 : (netOfPort[port] as number);
}

interface Item {
  readonly part: number;
  readonly enter: number;
  readonly leave: number;
}

/** A motor's first winding stands on the line of its run: straight are the stops that come in there and go out below it. */
function isStraight({ form, spots }: Part, stop: Exclude<Stop, { kind: 'rail' }>): boolean {
  if (!isPolyphase(form)) return true;
  const [enter, leave] = stop.kind === 'hop' ? [stop.enter, stop.leave] : [stop.spot, stop.spot];
  const sides = new Set([spots[enter]?.side, spots[leave]?.side]);
  return spots[enter]?.dx === 0 && spots[leave]?.dx === 0 && (stop.kind === 'touch' || sides.size === 2);
}

/**
 * Every part is placed once, by the first path that goes through it; others join it where it stands. A motor is placed by a
 * path that comes to its first winding; where none does, it stands alone.
 */
function itemsOf({ parts, pieces }: Stops): { readonly path: number; readonly items: Item[] }[] {
  const gone = new Uint8Array(parts.length);
  const straight = new Uint8Array(parts.length);
  for (const { stops } of pieces)
    for (const stop of stops) {
      if (stop.kind === 'rail') continue;
      const goes = isStraight(parts[stop.part] as Part, stop);
      if (goes) straight[stop.part] = 1;
      if (stop.kind === 'hop' && goes) gone[stop.part] = 1;
    }
  const placed = new Uint8Array(parts.length);
  const found: { path: number; items: Item[] }[] = [];
  for (const { path, stops } of pieces) {
    let items: Item[] = [];
    const alone: Item[] = [];
    const flush = (): void => {
      if (items.length > 0) found.push({ path, items });
      items = [];
    };
    stops.forEach((stop, index) => {
      if (stop.kind === 'rail') {
        if (index > 0) flush();
        return;
      }
      const goes = isStraight(parts[stop.part] as Part, stop);
      if (stop.kind === 'hop') {
        if (placed[stop.part] || !goes) {
          flush();
          if (placed[stop.part] || straight[stop.part]) return;
          placed[stop.part] = 1;
          alone.push({ part: stop.part, enter: stop.enter, leave: stop.enter });
          return;
        }
        placed[stop.part] = 1;
        items.push({ part: stop.part, enter: stop.enter, leave: stop.leave });
        return;
      }
      if (stop.shared || gone[stop.part] || placed[stop.part] || (!goes && straight[stop.part])) return;
      placed[stop.part] = 1;
      const item = { part: stop.part, enter: stop.spot, leave: stop.spot };
      if (goes && (index === 0 || index === stops.length - 1)) items.push(item);
      else alone.push(item);
    });
    flush();
    for (const item of alone) found.push({ path, items: [item] });
  }
  return found;
}

/** Which nets lie below which: grows with each run that is stood up. */
class Downhill {
  private readonly below = new Map<number, number[]>();
  add(upper: number, lower: number): void {
    if (upper < 0 || lower < 0 || upper === lower) return;
    const list = this.below.get(upper);
    if (list) list.push(lower);
    else this.below.set(upper, [lower]);
  }
  reaches(from: number, to: number): boolean {
    const seen = new Set([from]);
    const queue = [from];
    for (let at = queue.pop(); at !== undefined; at = queue.pop())
      for (const next of this.below.get(at) ?? []) {
        if (next === to) return true;
        if (!seen.has(next)) {
          seen.add(next);
          queue.push(next);
        }
      }
    return false;
  }
}

export interface Poles {
  /** Nets that hold the feeding, and the return, pole of a supply. */
  readonly feeds: ReadonlySet<number>;
  readonly returns: ReadonlySet<number>;
}

export function polesOf(circuit: Circuit, { railNet }: Wiring): Poles {
  const feeds = new Set<number>();
  const returns = new Set<number>();
  for (const { name } of circuit.supplies)
    for (const [rail, net] of railNet)
      if (rail.startsWith(`${name}:`)) (/:(N|L-)$/.test(rail) ? returns : feeds).add(net);
  return { feeds, returns };
}

export function findRuns(circuit: Circuit, stops: Stops, wiring: Wiring): Run[] {
  const { feeds, returns } = polesOf(circuit, wiring);
  const hill = new Downhill();
  const net = (part: number, spot: number): number =>
    wiring.netOfPort[(wiring.firstPort[part] as number) + spot] as number;
  const runs = itemsOf(stops).map(({ path, items }, index): Run => {
    const first = items[0] as Item;
    const last = items[items.length - 1] as Item;
    const start = net(first.part, first.enter);
    const end = net(last.part, last.leave);
    const upward = (): boolean => {
      if (returns.has(start) !== returns.has(end)) return returns.has(start);
      if (feeds.has(start) !== feeds.has(end)) return feeds.has(end);
      return hill.reaches(end, start);
    };
    const reversed = items.length === 1 && first.enter === first.leave ? false : upward();
    const order = reversed ? [...items].reverse() : items;
    const parts = order.map((item, at) =>
      stood(stops.parts[item.part] as Part, item, reversed, at, order.length, wiring),
    );
    for (const { part, flipped } of parts) {
      const { spots } = stops.parts[part] as Part;
      const upper = flipped ? 'bottom' : 'top';
      spots.forEach((above, a) => {
        spots.forEach((below, b) => {
          if (above.side === upper && below.side !== upper) hill.add(net(part, a), net(part, b));
        });
      });
    }
    return {
      index,
      path,
      sheet: circuit.paths[path]?.sheet ?? 1,
      parts,
      head: netOfPort(wiring, parts[0]?.above),
      foot: netOfPort(wiring, parts[parts.length - 1]?.below),
      joined: parts.length,
    };
  });
  return belowMotors(stops, runs, wiring);
}

/**
 * What begins at a winding's lower end stands below that winding, in the column that leads to its upper end: the poles that
 * join the star point, or bridge the windings, hang under the motor.
 */
function belowMotors({ parts }: Stops, runs: readonly Run[], wiring: Wiring): Run[] {
  const motors = parts.filter(({ form }) => isPolyphase(form));
  if (motors.length === 0) return [...runs];
  const stacked = new Map<Run, Run>();
  const gone = new Set<Run>();
  const free = runs.filter(({ parts: list }) => !list.some(({ part }) => isPolyphase(parts[part]!.form)));
  for (const motor of motors) {
    const net = (side: Spot['side'], dx: number): number => {
      const spot = motor.spots.findIndex((other) => other.side === side && other.dx === dx);
      const at =
        spot < 0 ? -1 : (wiring.netOfPort[(wiring.firstPort[motor.index] as number) + spot] as number);
      return (wiring.nets[at]?.rails.length ?? 0) > 0 ? -1 : at;
    };
    const taken = (run: Run): boolean => gone.has(run) || stacked.has(run);
    // The first winding stands on the line of the motor's own run.
    const others = motor.spots.filter(({ side, dx }) => side === 'top' && dx > 0);
    const pairs = others.map(({ dx }) => {
      const [upper, lower] = [net('top', dx), net('bottom', dx)];
      const over = free.find((run) => upper >= 0 && run.foot === upper && !taken(run));
      const under = free.find((run) => lower >= 0 && run.head === lower && run !== over && !taken(run));
      return { over, under };
    });
    if (new Set(pairs.flatMap(({ over, under }) => [over, under])).size < 2 * others.length) continue;
    for (const { over, under } of pairs) {
      if (!over || !under || over.sheet !== under.sheet) continue;
      gone.add(under);
      stacked.set(over, { ...over, parts: [...over.parts, ...under.parts], foot: under.foot });
    }
  }
  return runs.filter((run) => !gone.has(run)).map((run, index) => ({ ...(stacked.get(run) ?? run), index }));
}

const netOfPort = (wiring: Wiring, port = -1): number => (port < 0 ? -1 : (wiring.netOfPort[port] as number));

/** Turns a part so that the run comes in from above. */
function stood(
  part: Part,
  item: Item,
  reversed: boolean,
  at: number,
  count: number,
  wiring: Wiring,
): RunPart {
  const base = wiring.firstPort[part.index] as number;
  const [upper, lower] = reversed ? [item.leave, item.enter] : [item.enter, item.leave];
  const side = (spot: number): string => part.spots[spot]?.side ?? 'top';
  if (upper === lower) {
    // Only one terminal is traced: it faces the rest of the run; alone in a run the part stands as it is.
    const wanted = count === 1 ? side(upper) : at === 0 ? 'bottom' : 'top';
    const flipped = side(upper) !== wanted;
    return {
      part: part.index,
      above: wanted === 'top' ? base + upper : -1,
      below: wanted === 'bottom' ? base + upper : -1,
      flipped,
    };
  }
  const flipped = side(upper) === 'bottom' && side(lower) === 'top';
  return { part: part.index, above: base + upper, below: base + lower, flipped };
}
