/** Moments as they are typed and printed: in the time zone of this machine. */
import { UsageError } from '../../io.ts';

const UNITS: Readonly<Record<string, number>> = { h: 3_600_000, d: 86_400_000, w: 7 * 86_400_000 };
const LATER = /^\+(\d{1,3})([hdw])$/;
const DATED = /^(\d{4}-\d\d-\d\d)(?:[ T](\d\d:\d\d))?$/;

/**
 * Reads `now`, `+7d` (hours, days, weeks from `from`), `2026-03-02` (its first minute) or `2026-03-02 18:00`.
 *
 * @throws UsageError when it is none of these
 */
export function momentIn(option: string, text: string, from: number): number {
  if (text === 'now') return from;
  const later = LATER.exec(text);
  if (later) return from + Number(later[1]) * UNITS[later[2]!]!;
  const dated = DATED.exec(text.trim());
  const at = dated ? new Date(`${dated[1]}T${dated[2] ?? '00:00'}`).getTime() : Number.NaN;
  if (!Number.isNaN(at)) return at;
  throw new UsageError(
    `${option} ${text}: no time.`,
    `For example ${option} "2026-03-09 18:00", or ${option} +7d for seven days later.`,
  );
}

const WORDS = new Intl.DateTimeFormat('en-GB', {
  weekday: 'short',
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
});
export const momentText = (at: number): string => WORDS.format(at);

/** The time zone of this machine. */
export const ownZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone;
