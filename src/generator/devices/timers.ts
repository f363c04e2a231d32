import type { CoilPart, Source } from '../parts.ts';
import { coilPart, hop, type RelayWish, TIMER_DIGITS } from './coil-part.ts';
import { type DeviceShelf, textOf } from './shelf.ts';

const addDelay =
  (kind: 'on-delay' | 'off-delay') =>
  (shelf: DeviceShelf, { rating }: Source, seconds: number, { poles, text }: RelayWish): CoilPart => {
    const name = shelf.name('K');
    shelf.add({ kind, name, poles, rating, seconds, ...textOf(text) });
    return coilPart(shelf.random, name, poles, TIMER_DIGITS);
  };

/** An off-delay whose supply stays on; the signal comes to its control input. */
export function addSuppliedOffDelay(
  shelf: DeviceShelf,
  { rating }: Source,
  seconds: number,
  { poles, text }: RelayWish,
): CoilPart {
  const name = shelf.name('K');
  shelf.add({ kind: 'supplied-off-delay', name, poles, rating, seconds, ...textOf(text) });
  return {
    ...coilPart(shelf.random, name, poles, TIMER_DIGITS),
    coil: hop(name, 'B1', 'A2'),
    supply: hop(name, 'A1', 'A2'),
  };
}

export const addOnDelay = addDelay('on-delay');
export const addOffDelay = addDelay('off-delay');

export function addFlasher(
  shelf: DeviceShelf,
  { rating }: Source,
  on: number,
  off: number,
  { poles, text }: RelayWish,
): CoilPart {
  const name = shelf.name('K');
  shelf.add({ kind: 'flasher', name, poles, rating, on, off, ...textOf(text) });
  return coilPart(shelf.random, name, poles, TIMER_DIGITS);
}
