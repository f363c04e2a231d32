/** Whose turn it is among equals. */

/** A number from 0 to 2^32 - 1 that depends on nothing but the seed and the name (FNV-1a over both). */
export function turnOf(seed: number, name: string): number {
  let hash = 0x811c9dc5;
  for (const unit of `${seed} ${name}`) hash = Math.imul(hash ^ unit.codePointAt(0)!, 0x01000193);
  return hash >>> 0;
}
