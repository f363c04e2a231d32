import type { CoilPart, Source } from '../parts.ts';
import { coilPart, hop, type RelayWish, TIMER_DIGITS } from './coil-part.ts';
import { type DeviceShelf, textOf } from './shelf.ts';

/** Changeovers of a timing relay, at most. */
const MOST_POLES = 2;

const addDelay =
  (kind: 'on-delay' | 'off-delay' | 'supplied-off-delay') =>
  (shelf: DeviceShelf, { rating }: Source, seconds: number, { poles, text }: RelayWish): CoilPart => {
    const name = shelf.name('K');
    return coilPart(shelf, name, { wished: poles, most: MOST_POLES }, TIMER_DIGITS, (count) => ({
      kind,
      name,
      poles: count,
      rating,
      seconds,
      ...textOf(text, name),
    }));
  };

export const addOnDelay = addDelay('on-delay');
export const addOffDelay = addDelay('off-delay');

/** An off-delay whose supply stays on; the signal comes to its control input. */
export const addSuppliedOffDelay: typeof addOffDelay = (...wish) => {
  const part = addDelay('supplied-off-delay')(...wish);
  return { ...part, coil: hop(part.name, 'B1', 'A2'), supply: part.coil };
};

export function addFlasher(
  shelf: DeviceShelf,
  { rating }: Source,
  on: number,
  off: number,
  { poles, text }: RelayWish,
): CoilPart {
  const name = shelf.name('K');
  return coilPart(shelf, name, { wished: poles, most: MOST_POLES }, TIMER_DIGITS, (count) => ({
    kind: 'flasher',
    name,
    poles: count,
    rating,
    on,
    off,
    ...textOf(text, name),
  }));
}
