/** A list in pieces: a statement takes only so many values. */
export function* chunksOf<T>(list: readonly T[], size: number): Generator<readonly T[]> {
  for (let from = 0; from < list.length; from += size) yield list.slice(from, from + size);
}

/** A list by a key, the keys in the order in which they first come. */
export function groupsOf<T>(
  list: readonly T[],
  keyOf: (entry: T) => string,
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const entry of list) {
    const key = keyOf(entry);
    const group = groups.get(key);
    if (group) group.push(entry);
    else groups.set(key, [entry]);
  }
  return groups;
}
