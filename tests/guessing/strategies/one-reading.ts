/** Meter: always nothing, or always the whole voltage of a supply. */
import type { Seen, Strategy } from '../seen.ts';

const always = (id: string, volts: (seen: Seen) => number): Strategy => ({
  id,
  learn: (kind) => (kind === 'meter' ? (seen) => ({ kind, volts: volts(seen) }) : undefined),
});

export const alwaysNothing = always('0 V', () => 0);

export const alwaysWhole = always('whole voltage', ({ supplies, points }) => {
  const named = supplies.find(({ name }) => points?.some((point) => point.startsWith(`${name}:`)));
  return (named ?? supplies[0]!).volts;
});
