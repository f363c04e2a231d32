/**
 * From moments to places on the axis. One scale holds all along it; a long time in which nothing happens may be left out, and is then
 * marked as a broken axis is. Where no time passes between two moments only their order is shown, which is marked too.
 */

/** What lies between a moment and the next: time to scale, time that is cut, or no time at all. */
export type Gap = 'scale' | 'cut' | 'order';

export interface Scale {
  /** Places of the moments. */
  readonly x: readonly number[];
  /** By moment: what lies between it and the next. One fewer than moments. */
  readonly gaps: readonly Gap[];
  /** Where the axis begins and ends, a little beyond the first and the last moment. */
  readonly from: number;
  readonly to: number;
  readonly ticks: readonly Tick[];
}

/** A tick on the axis, and the middle of its text. */
interface Tick {
  readonly x: number;
  readonly text: string;
  readonly textAt: number;
}

/** In the units of the axis. */
export interface Spacing {
  /** Moments nearer than this can't be told apart. */
  readonly apart: number;
  /** Between moments of one time. */
  readonly order: number;
  /** The same at most, where there is nothing else to show. */
  readonly mostOrder: number;
  /** For time that is cut. */
  readonly cut: number;
  /** Before the first moment and after the last. */
  readonly beside: number;
  /** Between the texts under the axis. */
  readonly texts: number;
}

export const PICTURE: Spacing = { apart: 12, order: 18, mostOrder: 110, cut: 46, beside: 16, texts: 8 };

/** How a moment is written, and how wide that comes out. */
export interface Moments {
  readonly text: (ms: number) => string;
  readonly width: (text: string) => number;
}

/** Time is left out only where it is so many times as long as what is drawn instead. */
const WORTH_CUTTING = 1.5;
/** How much of the room may go to what is left out. */
const MOST_CUT = 0.6;

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

/** Which times are cut, and how much room each of them has instead. */
interface Cut {
  readonly gone: ReadonlySet<number>;
  readonly width: number;
}

/**
 * The longest times are cut first, as many as it takes for the shortest that is left to be told apart; where that can't be, as many as
 * make it widest.
 *
 * @param times - milliseconds between moments; 0 where none passes
 * @param room - for all that passes
 */
function cutTimes(times: readonly number[], room: number, { apart, cut }: Spacing): Cut {
  const byLength = times
    .flatMap((ms, index) => (ms > 0 ? [index] : []))
    .sort((one, other) => times[other]! - times[one]!);
  const shortest = times[byLength.at(-1) ?? 0] ?? 0;
  let left = sumOf(times);
  let best: Cut = { gone: new Set(), width: cut };
  let widest = shortest * (room / left);
  for (let count = 1; count < byLength.length && widest < apart; count++) {
    const last = times[byLength[count - 1]!]!;
    left -= last;
    const width = Math.min(cut, (MOST_CUT * room) / count);
    const scale = (room - count * width) / left;
    if (last * scale < WORTH_CUTTING * width) break;
    if (shortest * scale <= widest) continue;
    widest = shortest * scale;
    best = { gone: new Set(byLength.slice(0, count)), width };
  }
  return best;
}

/** @param moments - milliseconds, ascending */
export function scaleOf(
  moments: readonly number[],
  from: number,
  to: number,
  written: Moments,
  spacing: Spacing = PICTURE,
): Scale {
  const times = moments.slice(1).map((ms, index) => ms - moments[index]!);
  const room = to - from - 2 * spacing.beside;
  const still = times.filter((ms) => ms === 0).length;
  const passes = still < times.length;
  const order = passes
    ? Math.min(spacing.order, (0.5 * room) / Math.max(1, still))
    : Math.min(spacing.mostOrder, room / Math.max(1, still));
  const forTime = room - still * order;
  const { gone, width } = cutTimes(times, forTime, spacing);
  const gaps = times.map((ms, index): Gap => (ms === 0 ? 'order' : gone.has(index) ? 'cut' : 'scale'));
  const shown = sumOf(times.filter((_, index) => !gone.has(index)));
  const perMs = (forTime - gone.size * width) / (shown || 1);
  const x = [from + spacing.beside];
  for (const [index, gap] of gaps.entries())
    x.push(x.at(-1)! + (gap === 'order' ? order : gap === 'cut' ? width : times[index]! * perMs));
  const even = passes && gaps.every((gap) => gap === 'scale');
  const ticks = even
    ? evenTicks(x[0]!, perMs, moments.at(-1)!, to, written, spacing.texts)
    : momentTicks(moments, x, passes, to, written, spacing.texts);
  return { x, gaps, from, to: passes ? to : x.at(-1)! + spacing.beside, ticks };
}

/** In round steps, where nothing is cut. */
function evenTicks(
  zero: number,
  perMs: number,
  end: number,
  to: number,
  written: Moments,
  between: number,
): Scale['ticks'] {
  const least = (written.width(written.text(end)) + between) / perMs;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= least) ?? least;
  const ticks: Tick[] = [];
  for (let count = 0; zero + count * step * perMs <= to; count++) {
    const text = written.text(count * step);
    const x = zero + count * step * perMs;
    if (x + written.width(text) / 2 <= to) ticks.push({ x, text, textAt: x });
  }
  return ticks;
}

/** At every moment, of several of one time at the first, as far as there is room for the text. */
function momentTicks(
  moments: readonly number[],
  x: readonly number[],
  passes: boolean,
  to: number,
  written: Moments,
  between: number,
): Scale['ticks'] {
  // Where no time passes there is none to be told.
  if (!passes) return [];
  const ticks: Tick[] = [];
  let free = Number.NEGATIVE_INFINITY;
  moments.forEach((ms, index) => {
    if (index > 0 && ms === moments[index - 1]) return;
    const text = written.text(ms);
    const half = written.width(text) / 2;
    // The last one doesn't stick out.
    const textAt = Math.min(x[index]!, to - half);
    if (textAt - half < free) return;
    ticks.push({ x: x[index]!, text, textAt });
    free = textAt + half + between;
  });
  return ticks;
}
