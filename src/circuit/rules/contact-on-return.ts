import { readAs } from '../anatomy/index.ts';
import { isExempt, linksOf, linkText, neighboursOf, polesOf, reach, wayBack } from './closable.ts';
import { isInner, loadsOf } from './parts.ts';
import type { Broken, DrawingRule } from './rule.ts';

/**
 * With the loads taken out, what the return pole reaches without passing a contact is the common; what it reaches only
 * through contacts is the return side. A load that has a side there, and none on the common, has those contacts between it
 * and the return. Motors are no control circuit; loads in series have a load between them and the return, which is allowed.
 */
export const contactOnReturn: DrawingRule = {
  name: 'contact-on-return',
  check(_circuit, view) {
    const { of } = view.conductors;
    const links = linksOf(view);
    const closing = neighboursOf(view, links);
    const fixed = neighboursOf(view, links.filter(isExempt));
    const found: Broken[] = [];
    const loads = loadsOf(view).filter(
      ({ load, from, to }) =>
        readAs(load.role) !== 'winding' && !isInner(load.to) && view.wired.has(from) && view.wired.has(to),
    );
    for (const pole of polesOf(view).filter(({ isReturn }) => isReturn)) {
      const start = of.get(pole.ref)!;
      const common = reach(start, fixed);
      const side = reach(start, closing);
      for (const { part, load, from, to, named } of loads) {
        const ends = [of.get(from)!, of.get(to)!];
        if (ends.some((end) => common.has(end))) continue;
        // The end that is fewer contacts away is the one meant to lead back.
        const [way] = ends
          .filter((end) => side.has(end))
          .map((end) => ({ end, links: wayBack(end, side).filter((link) => !isExempt(link)) }))
          .toSorted((a, b) => a.links.length - b.links.length);
        if (!way) continue;
        found.push({
          said: {
            says: 'contact-on-return',
            contacts: way.links.map(linkText),
            load: named,
            pole: pole.ref,
          },
          concern: { kind: 'device', index: part.index, terminal: way.end === ends[1] ? load.to : load.from },
        });
      }
    }
    return found;
  },
};
