/** Contacts in series and parallel, turned into current paths. */
import type { Step } from '../../shared/circuit.ts';

/** One hop, or several ways side by side. */
export type Link = Step | { readonly either: readonly Chain[] };
export type Chain = readonly Link[];

/** A path still without its two ends: `feed` is a supply's protected pole, `return` its other pole. */
export interface Line {
  /** Absent: the line begins with its first hop's own terminal. */
  readonly from?: Step | 'feed';
  readonly steps: readonly Step[];
  readonly to?: Step | 'return';
}

export const either = (...ways: readonly Chain[]): Link => ({ either: ways });

/** The terminal alone at which a hop is left. */
export const endOf = ({ device, enter, leave }: Step): Step => ({ device, enter: leave ?? enter });
/** The terminal alone at which a hop is entered. */
export const startOf = ({ device, enter }: Step): Step => ({ device, enter });

/** The first hop of a chain, along the first of its ways. */
export function firstStep(chain: Chain): Step {
  const [first] = chain;
  if (!first) throw new RangeError('a chain needs a link');
  return 'either' in first ? firstStep(first.either[0] ?? []) : first;
}

/**
 * The lines of a chain: the first way of every parallel group lies in the main line, each other way is a line of its
 * own from the terminal before the group to the terminal after it.
 */
export function linesOf(chain: Chain, from: Line['from'], to: Line['to']): Line[] {
  const steps: Step[] = [];
  const beside: Line[] = [];
  const walk = (links: Chain, after: Line['to']): void => {
    links.forEach((link, index) => {
      const following = links.slice(index + 1);
      const next = following.length > 0 ? startOf(firstStep(following)) : after;
      if (!('either' in link)) {
        steps.push(link);
        return;
      }
      const last = steps.at(-1);
      const before = last ? endOf(last) : from;
      const [first = [], ...others] = link.either;
      walk(first, next);
      for (const way of others) beside.push(...linesOf(way, before, next));
    });
  };
  walk(chain, to);
  const [first] = steps;
  // A way that begins at the terminal it comes from needs no conductor to it.
  const begun =
    first && typeof from === 'object' && first.device === from.device && first.enter === from.enter;
  return [{ ...(from && !begun ? { from } : {}), steps, ...(to ? { to } : {}) }, ...beside];
}
