/**
 * What follows from a thing that never changes, worked out once for each such thing and kept as long as the thing is.
 *
 * @param work - called once for each thing, however often it is asked
 */
export function once<Thing extends object, Found>(work: (thing: Thing) => Found): (thing: Thing) => Found {
  const known = new WeakMap<Thing, Found>();
  return (thing) => {
    const before = known.get(thing);
    if (before !== undefined) return before;
    const found = work(thing);
    known.set(thing, found);
    return found;
  };
}
