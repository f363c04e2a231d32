/** From milliseconds to places on the axis: in proportion where that can be read, else stretched between the moments. */

export interface Scale {
  readonly x: (ms: number) => number;
  /** True: distances are in proportion to time. */
  readonly even: boolean;
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
}

/** In the units of the axis. */
export interface Spacing {
  /** Moments nearer than this on an even axis cannot be told apart. */
  readonly apart: number;
  /** Between the texts of an even axis, and of a stretched one. */
  readonly even: number;
  readonly stretched: number;
}

const PICTURE: Spacing = { apart: 9, even: 14, stretched: 6 };
/** Changes within this share of the whole are one moment on an even axis. */
const TOGETHER = 1 / 150;

/** How a moment is written, and how wide that comes out. */
export interface Moments {
  readonly text: (ms: number) => string;
  readonly width: (text: string) => number;
}

/** `moments` and `acts` in milliseconds, ascending. */
export function scaleOf(
  moments: readonly number[],
  acts: readonly number[],
  from: number,
  to: number,
  written: Moments,
  spacing: Spacing = PICTURE,
): Scale {
  const all = [...new Set([0, ...moments, ...acts])].sort((a, b) => a - b);
  const end = all[all.length - 1] as number;
  const room = to - from;
  const starts = [...new Set(acts)].sort((a, b) => a - b);
  const nearest = Math.min(...starts.slice(1).map((ms, index) => ms - (starts[index] as number)), end || 1);
  const gaps = all.slice(1).map((ms, index) => ms - (all[index] as number));
  const telling = gaps.filter((gap) => gap > end * TOGETHER);
  const even =
    end > 0 &&
    (Math.min(nearest, ...telling) / end) * room * 0.9 >= spacing.apart &&
    starts.length === acts.length;
  return even
    ? evenScale(end, from, room, written, spacing.even)
    : stretched(all, from, room, written, spacing.stretched);
}

function evenScale(end: number, from: number, room: number, written: Moments, between: number): Scale {
  const whole = end * 1.08;
  const x = (ms: number): number => from + (ms / whole) * room;
  const least = written.width(written.text(end)) + between;
  const raw = (least / room) * whole;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((size) => size >= raw) ?? raw;
  const ticks: { x: number; text: string }[] = [];
  for (let ms = 0; ms <= whole; ms += step) ticks.push({ x: x(ms), text: written.text(ms) });
  return { x, even: true, ticks };
}

/** Each gap as wide as the logarithm of its time; every moment that has room gets its time. */
function stretched(
  all: readonly number[],
  from: number,
  room: number,
  written: Moments,
  between: number,
): Scale {
  const widths = all.slice(1).map((ms, index) => 1 + Math.log2(1 + (ms - (all[index] as number))) / 3);
  const tail = 1.5;
  const sum = widths.reduce((total, width) => total + width, tail) + 0.4;
  const places = [from + (0.4 / sum) * room];
  for (const width of widths) places.push((places[places.length - 1] as number) + (width / sum) * room);
  const x = (ms: number): number => {
    let index = all.findIndex((moment) => moment > ms) - 1;
    if (index < 0) index = all.length - 1;
    const [a, b] = [all[index] as number, all[index + 1]];
    const [left, right] = [places[index] as number, places[index + 1] ?? from + room];
    return b === undefined ? left : left + ((ms - a) / (b - a)) * (right - left);
  };
  const ticks: { x: number; text: string }[] = [];
  let free = Number.NEGATIVE_INFINITY;
  for (const ms of all) {
    const [text, at] = [written.text(ms), x(ms)];
    const half = written.width(text) / 2;
    if (at - half < free) continue;
    ticks.push({ x: at, text });
    free = at + half + between;
  }
  return { x, even: false, ticks };
}
