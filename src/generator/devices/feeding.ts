/** Supplies, each with what it is fed through. */
import type { Step } from '../../../shared/circuit.ts';
import type { Source } from '../parts.ts';
import type { Feeding } from '../sources.ts';
import { hop, mainHops } from './coil-part.ts';
import type { DeviceShelf } from './shelf.ts';

/**
 * A supply with a breaker or a fuse in its pole. `earthed`: its return is bonded; of supplies that must stay isolated from
 * one another at most one may be.
 */
export function addSource(
  shelf: DeviceShelf,
  { rating, source, amps, fused, bonded }: Feeding,
  text: string,
  earthed: boolean = bonded ?? shelf.random.chance(0.6),
): Source {
  const name = shelf.supplyName();
  shelf.supplies.push({ name, ...rating, earthed, text: `${text}, ${source}` });
  const protection = shelf.name('F');
  const kind = !fused && shelf.random.chance(0.6) ? 'breaker' : 'fuse';
  shelf.add({ kind, name: protection, poles: 1, amps: shelf.random.pick(amps), text });
  const direct = rating.current === 'DC';
  return {
    name,
    rating,
    feed: [{ device: name, enter: direct ? 'L+' : 'L' }, hop(protection, '1', '2')],
    return: { device: name, enter: direct ? 'L-' : 'N' },
    protection,
  };
}

/** A three-phase supply; `volts` is between two of its poles. */
export function addMains(shelf: DeviceShelf, volts: number): string {
  const name = shelf.supplyName();
  shelf.supplies.push({ name, volts, current: '3AC', earthed: true, text: 'Power' });
  return name;
}

/** A breaker in the three poles of a supply: each of its ways, from the supply's pole on. */
export function addMainsBreaker(
  shelf: DeviceShelf,
  mains: string,
  { amps, text }: { readonly amps: number; readonly text: string },
): readonly (readonly [Step, Step])[] {
  const breaker = shelf.name('F');
  shelf.add({ kind: 'breaker', name: breaker, poles: 3, amps, text });
  return mainHops(breaker, 3).map((pole, phase) => [{ device: mains, enter: `L${phase + 1}` }, pole]);
}
