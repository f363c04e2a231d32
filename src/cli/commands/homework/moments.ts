/** Moments as they are typed and printed: in the time zone of this machine. */
import type { CommandWords } from '../../../words/commands.ts';
import { UsageError } from '../../io.ts';

const UNITS: Readonly<Record<string, number>> = { h: 3_600_000, d: 86_400_000, w: 7 * 86_400_000 };
const LATER = /^\+(\d{1,3})([hdw])$/;
const DATED = /^(\d{4}-\d\d-\d\d)(?:[ T](\d\d:\d\d))?$/;

const two = (number: number): string => String(number).padStart(2, '0');

/** What a clock on this machine shows at a moment, as `2026-03-02T18:00`. */
const shownAt = (at: number): string => {
  const date = new Date(at);
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}T${two(date.getHours())}:${two(date.getMinutes())}`;
};

/**
 * In the night in which the clocks change some times are there twice and some are left out. Of two the later one is
 * meant, so that nobody is closed out early; what a clock never shows is not taken for something else.
 */
function onTheClock({ moments }: CommandWords, given: string, wanted: string, at: number): number {
  const [year, month, day] = wanted.slice(0, 10).split('-').map(Number) as [number, number, number];
  const days = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (day > days)
    throw new UsageError(
      moments.noSuchDay.wrong(given),
      moments.noSuchDay.right({ month: Date.UTC(year, month - 1), days }),
    );
  if (shownAt(at) !== wanted) throw new UsageError(moments.noSuchTime.wrong(given), moments.noSuchTime.right);
  return [60, 30].map((minutes) => at + minutes * 60_000).find((later) => shownAt(later) === wanted) ?? at;
}

/**
 * `option` is what it was given to, empty where it stands by itself. Reads `now`, `+7d` (hours, days, weeks from `from`), `2026-03-02` (its first minute) or `2026-03-02 18:00`.
 *
 * @throws UsageError when it is none of these
 */
export function momentIn(words: CommandWords, option: string, text: string, from: number): number {
  if (text === 'now') return from;
  const later = LATER.exec(text);
  if (later) return from + Number(later[1]) * UNITS[later[2]!]!;
  const dated = DATED.exec(text.trim());
  const wanted = dated ? `${dated[1]}T${dated[2] ?? '00:00'}` : '';
  const at = new Date(wanted).getTime();
  const given = `${option} ${text}`.trimStart();
  if (!Number.isNaN(at)) return onTheClock(words, given, wanted, at);
  const { noTime } = words.moments;
  throw new UsageError(noTime.wrong(given), option ? noTime.rightFor(option) : noTime.right);
}

/** The time zone of this machine. */
export const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
