import type { CoilPart, LatchingPart, Source } from '../parts.ts';
import { coilPart, hop, RELAY_DIGITS, type RelayWish } from './coil-part.ts';
import { type DeviceShelf, textOf } from './shelf.ts';

/** A relay; which of its poles is used first is random. */
export function addRelay(shelf: DeviceShelf, { rating }: Source, { poles, text }: RelayWish): CoilPart {
  const name = shelf.name('K');
  shelf.add({ kind: 'relay', name, poles, rating, ...textOf(text) });
  return coilPart(shelf.random, name, poles, RELAY_DIGITS);
}

export function addLatchingRelay(
  shelf: DeviceShelf,
  { rating }: Source,
  { poles, text }: RelayWish,
): LatchingPart {
  const name = shelf.name('K');
  shelf.add({ kind: 'latching-relay', name, poles, rating, ...textOf(text) });
  return { ...coilPart(shelf.random, name, poles, RELAY_DIGITS), reset: hop(name, 'B1', 'B2') };
}
