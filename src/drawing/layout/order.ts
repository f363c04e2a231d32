/**
 * The order of the columns: as the paths are written, except that what branches off a path closes up beside it
 * where that saves crossings and long conductors.
 */
import { poleMechanism, type Run, type Survey } from '../parts/index.ts';
import { laneShifts } from './lanes.ts';
import type { Levels } from './levels.ts';

/** Columns further than this from a run's neighbours are not tried: keeps long sheets linear. */
const REACH = 8;
const CROSSING = 6;
const BACKWARDS = 2;
/** Between poles of one power device; and between contacts of one hand or process device. */
const APART = 10;
const LOOSE = 1.5;

interface Pin {
  readonly net: number;
  readonly channel: number;
  /** Offset in its column, between -0.5 and 0.5. */
  readonly dx: number;
}

/** A vertical piece of a run: crosses what runs in the channels between its ends, meets what runs in those at its ends. */
interface Upright {
  readonly net: number;
  readonly from: number;
  readonly to: number;
  readonly dx: number;
}

interface Ranked {
  readonly run: Run;
  readonly pins: readonly Pin[];
  readonly uprights: readonly Upright[];
  readonly nets: ReadonlySet<number>;
  /** Mechanisms of which it holds a pole: such columns stay together. */
  readonly poles: readonly { readonly mechanism: string; readonly power: boolean }[];
}

const THIN = 1 / 16;

function rank(drawn: Survey, run: Run, { row, channel }: Levels): Ranked {
  const { wiring } = drawn;
  const pins: Pin[] = [];
  const uprights: Upright[] = [];
  const nets = new Set<number>();
  const shifts = laneShifts(drawn, run);
  run.parts.forEach(({ part, above, below }, index) => {
    const at = row[part] as number;
    const first = wiring.firstPort[part] as number;
    const shift = shifts[index] ?? 0;
    const spots = drawn.parts[part]?.spots ?? [];
    const dxOf = (port: number): number => (shift + (spots[port - first]?.dx ?? 0)) * THIN;
    spots.forEach((_, s) => {
      const net = wiring.netOfPort[first + s] as number;
      if (net < 0) return;
      nets.add(net);
      pins.push({ net, channel: channel[net] as number, dx: dxOf(first + s) });
    });
    const upper = above < 0 ? -1 : (wiring.netOfPort[above] as number);
    if (index === 0 && upper >= 0)
      uprights.push({ net: upper, from: channel[upper] as number, to: at + 0.5, dx: dxOf(above) });
    const lower = below < 0 ? -1 : (wiring.netOfPort[below] as number);
    if (lower < 0) return;
    const next = index + 1 === run.joined ? undefined : run.parts[index + 1];
    const to = next ? (row[next.part] as number) + 0.5 : (channel[lower] as number);
    uprights.push({ net: lower, from: at + 0.5, to, dx: dxOf(below) });
  });
  const poles = run.parts.flatMap(({ part }) => {
    const mechanism = poleMechanism(drawn.parts[part]);
    return mechanism === undefined ? [] : [{ mechanism, power: !drawn.parts[part]?.actuator }];
  });
  return { run, pins, uprights, nets, poles };
}

/** Scratch space for `costOf`, by net; a net's entries hold while its stamp is the current one. */
class Spans {
  readonly min: Float64Array;
  readonly max: Float64Array;
  readonly channel: Int32Array;
  readonly ignored: Uint8Array;
  readonly touched: number[] = [];
  private readonly stamp: Int32Array;
  private now = 0;

  constructor(drawn: Survey) {
    const count = drawn.wiring.nets.length;
    this.min = new Float64Array(count);
    this.max = new Float64Array(count);
    this.channel = new Int32Array(count);
    this.stamp = new Int32Array(count);
    this.ignored = new Uint8Array(count);
    for (const net of drawn.poles.feeds) this.ignored[net] = 1;
    for (const net of drawn.poles.returns) this.ignored[net] = 1;
  }

  begin(): void {
    this.now += 1;
    this.touched.length = 0;
  }

  add(net: number, at: number, channel: number): void {
    if (this.stamp[net] !== this.now) {
      this.stamp[net] = this.now;
      this.touched.push(net);
      this.min[net] = at;
      this.max[net] = at;
      this.channel[net] = channel;
    } else if (at < (this.min[net] as number)) this.min[net] = at;
    else if (at > (this.max[net] as number)) this.max[net] = at;
  }
}

/**
 * Crossings weigh most, then the length of conductors; how far columns stand from the written order breaks ties. Stops
 * counting at `limit`.
 */
function costOf(columns: readonly Ranked[], spans: Spans, limit: number): number {
  spans.begin();
  for (let x = 0; x < columns.length; x++)
    for (const { net, channel, dx } of (columns[x] as Ranked).pins)
      if (spans.ignored[net] === 0) spans.add(net, x + dx, channel);
  let cost = gaps(columns);
  for (const net of spans.touched) {
    if (cost >= limit) return cost;
    const [min, max, channel] = [
      spans.min[net] as number,
      spans.max[net] as number,
      spans.channel[net] as number,
    ];
    if (max === min) continue;
    cost += max - min;
    for (let x = Math.round(min), last = Math.round(max); x <= last; x++)
      for (const upright of columns[x]?.uprights ?? []) {
        if (upright.net === net || channel < upright.from || channel > upright.to) continue;
        const at = x + upright.dx;
        if (at <= min || at >= max) continue;
        // At the end of an upright the two may still pass, on tracks of their own.
        cost += upright.from < channel && channel < upright.to ? CROSSING : 0.5;
      }
  }
  return cost;
}

/** What the columns between poles of one device cost. */
function gaps(columns: readonly Ranked[]): number {
  let last: Map<string, number> | undefined;
  let cost = 0;
  columns.forEach(({ poles }, x) => {
    for (const { mechanism, power } of poles) {
      last ??= new Map();
      const before = last.get(mechanism);
      if (before !== undefined) cost += (power ? APART : LOOSE) * Math.min(3, x - before - 1);
      last.set(mechanism, x);
    }
  });
  return cost;
}

const sharesNet = (one: Ranked, other: Ranked, { ignored }: Spans): boolean => {
  for (const net of one.nets) if (ignored[net] === 0 && other.nets.has(net)) return true;
  return false;
};

export function orderColumns(drawn: Survey, runs: readonly Run[], levels: Levels): Run[] {
  const spans = new Spans(drawn);
  const columns: Ranked[] = [];
  for (const run of runs) {
    const next = rank(drawn, run, levels);
    let last = -1;
    for (let index = columns.length - 1; index >= 0 && last < 0; index--)
      if (sharesNet(columns[index] as Ranked, next, spans)) last = index;
    if (last < 0) columns.push(next);
    else columns.splice(bestPlace(columns, next, last, spans), 0, next);
  }
  improve(columns, spans);
  return columns.map((column) => column.run);
}

/** Sheets longer than this are left as they were put together. */
const IMPROVED = 24;

/** Moves the columns of one power device's poles, as one block, to where they cost least. */
function improve(columns: Ranked[], spans: Spans): void {
  if (columns.length > IMPROVED) return;
  const holds = ({ poles }: Ranked, wanted: string): boolean =>
    poles.some(({ mechanism, power }) => power && mechanism === wanted);
  const mechanisms = new Set(
    columns.flatMap(({ poles }) => poles.filter(({ power }) => power).map(({ mechanism }) => mechanism)),
  );
  for (const mechanism of mechanisms) {
    const block = columns
      .filter((column) => holds(column, mechanism))
      .sort((a, b) => a.run.index - b.run.index);
    if (block.length < 2) continue;
    const rest = columns.filter((column) => !block.includes(column));
    let least = costOf(columns, spans, Number.POSITIVE_INFINITY) + disorder(columns);
    for (let place = rest.length; place >= 0; place--) {
      const tried = [...rest.slice(0, place), ...block, ...rest.slice(place)];
      const cost = costOf(tried, spans, least) + disorder(tried);
      if (cost >= least - 1e-9) continue;
      least = cost;
      columns.splice(0, columns.length, ...tried);
    }
  }
}

/** What it costs that columns stand against the written order, pair by pair. */
function disorder(columns: readonly Ranked[]): number {
  let pairs = 0;
  columns.forEach(({ run }, index) => {
    for (let before = 0; before < index; before++)
      if ((columns[before] as Ranked).run.index > run.index) pairs += 1;
  });
  return pairs;
}

/** Near its last neighbour, where it costs least; of equal places the one furthest right. */
function bestPlace(columns: readonly Ranked[], next: Ranked, neighbour: number, spans: Spans): number {
  // Only the neighbourhood counts: what lies outside the window costs the same for each place in it.
  const from = Math.max(0, neighbour - REACH);
  const window = columns.slice(from, Math.min(columns.length, neighbour + REACH));
  const tried = [...window, next];
  let best = from + window.length;
  let least = Number.POSITIVE_INFINITY;
  let written = 0;
  for (let place = window.length; place >= 0; place--) {
    if (place < window.length) {
      const passed = tried[place] as Ranked;
      tried[place] = next;
      tried[place + 1] = passed;
      if (passed.run.index < next.run.index) written += 1;
    }
    // Each further place to the left costs at least this.
    const back = BACKWARDS * written;
    if (back >= least) break;
    const cost = costOf(tried, spans, least - back) + back;
    if (cost < least) {
      least = cost;
      best = from + place;
    }
  }
  return best;
}
