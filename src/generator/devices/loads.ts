import type { LoadPart, Source } from '../parts.ts';
import type { Meaning } from '../vocabulary/index.ts';
import { hop } from './coil-part.ts';
import type { DeviceShelf } from './shelf.ts';

export function addLamp(shelf: DeviceShelf, { rating }: Source, text: string, meaning: Meaning): LoadPart {
  const name = shelf.name('H');
  const colour = shelf.lampColour(meaning);
  shelf.lamps++;
  shelf.add({ kind: 'lamp', name, text, colour, rating });
  return { name, hop: hop(name, 'X1', 'X2') };
}

export function addSounder(shelf: DeviceShelf, { rating }: Source, text: string): LoadPart {
  const name = shelf.name('H');
  shelf.add({ kind: 'sounder', name, text, rating });
  return { name, hop: hop(name, 'X1', 'X2') };
}

export function addValve(shelf: DeviceShelf, { rating }: Source, text: string): LoadPart {
  const name = shelf.name('Y');
  shelf.add({ kind: 'valve', name, text, rating });
  return { name, hop: hop(name, 'A1', 'A2') };
}
