import type { CoilPart, LatchingPart, Source } from '../parts.ts';
import { coilPart, hop, RELAY_DIGITS, type RelayWish } from './coil-part.ts';
import { type DeviceShelf, textOf } from './shelf.ts';

/** Changeovers of a plug-in relay, at most. */
const MOST_POLES = 4;

/** A relay; which of its poles is used first is random. */
export function addRelay(shelf: DeviceShelf, { rating }: Source, { poles, text }: RelayWish): CoilPart {
  const name = shelf.name('K');
  return coilPart(shelf, name, { wished: poles, most: MOST_POLES }, RELAY_DIGITS, (count) => ({
    kind: 'relay',
    name,
    poles: count,
    rating,
    ...textOf(text, name),
  }));
}

export function addLatchingRelay(
  shelf: DeviceShelf,
  { rating }: Source,
  { poles, text }: RelayWish,
): LatchingPart {
  const name = shelf.name('K');
  const part = coilPart(shelf, name, { wished: poles, most: MOST_POLES }, RELAY_DIGITS, (count) => ({
    kind: 'latching-relay',
    name,
    poles: count,
    rating,
    ...textOf(text, name),
  }));
  return { ...part, reset: hop(name, 'B1', 'B2') };
}
