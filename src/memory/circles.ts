/** Circles among skills: each stands on the next and the last on the first. */

/** What each skill stands on; names that aren't keys are ignored. */
export type Needs = ReadonlyMap<string, readonly string[]>;

/** The shortest way from a skill back to itself, without naming it twice; null where there is none. */
function circleThrough(start: string, needs: Needs): readonly string[] | null {
  const cameFrom = new Map<string, string>();
  let edge = [start];
  while (edge.length > 0) {
    const next: string[] = [];
    for (const from of edge) {
      for (const to of needs.get(from) ?? []) {
        if (to === start) {
          const way = [from];
          while (way[0] !== start) way.unshift(cameFrom.get(way[0]!)!);
          return way;
        }
        if (cameFrom.has(to) || !needs.has(to)) continue;
        cameFrom.set(to, from);
        next.push(to);
      }
    }
    edge = next;
  }
  return null;
}

/** Circles such that every skill that lies on any circle is named in at least one of them. */
export function findCircles(needs: Needs): readonly (readonly string[])[] {
  const named = new Set<string>();
  const circles: (readonly string[])[] = [];
  for (const skill of needs.keys()) {
    if (named.has(skill)) continue;
    const circle = circleThrough(skill, needs);
    if (!circle) continue;
    circles.push(circle);
    for (const member of circle) named.add(member);
  }
  return circles;
}
