/**
 * A marked paper in as few letters as reports need: what each item earned, whether it was answered, whether a tutor changed
 * it, how large its drawing is, and the wrong idea behind it. A term's reports go through thousands of papers, and a
 * whole mark is tens of times as long.
 */
import type { HomeworkSet, ItemMark, Paper, PaperItem, PaperMark } from '../../../shared/homework.ts';
import { earnedOf } from './totals.ts';

/** Earned, answered (index in ANSWERED), overrides, hops of the drawing, and the idea that alone explains the answer. */
export type ShortItem = readonly [
  earned: number,
  answered: number,
  overrides: number,
  hops: number,
  idea?: string,
];
export type ShortMark = readonly ShortItem[];

const ANSWERED = ['none', 'part', 'all'] as const satisfies readonly ItemMark['answered'][];

/** How large a drawing is: the hops of its current paths. */
export const hopsOf = ({ question }: PaperItem): number =>
  question.circuit.paths.reduce((sum, { steps }) => sum + steps.length, 0);

export const shortMark = (paper: Paper, { items }: PaperMark): ShortMark =>
  items.map((item, index): ShortItem => {
    const { misconceptions } = item.mark;
    const head = [
      earnedOf(item),
      ANSWERED.indexOf(item.answered),
      item.overrides.length,
      hopsOf(paper.items[index]!),
    ] as const;
    return misconceptions.length === 1 ? [...head, misconceptions[0]!] : head;
  });

/** One for all that have none: there are hundreds of thousands of them. */
const NOTHING = Object.freeze<never[]>([]) as never[];

type Place = HomeworkSet['places'][number];

function itemFrom({ skill, marks }: Place, [earned, answered, , , idea]: ShortItem): ItemMark {
  return {
    skill,
    circuit: '',
    marks,
    answered: ANSWERED[answered] ?? 'none',
    hint: false,
    secondsUsed: null,
    mark: {
      share: earned / marks,
      correct: earned === marks,
      parts: NOTHING,
      misconceptions: idea === undefined ? NOTHING : [idea],
    },
    overrides: NOTHING,
  };
}

type Learner = { readonly learner: string; readonly attempt: number };

/**
 * Makes marks of one set's short ones, which reports read as the whole ones: marks, answered, ideas. Not in them: parts,
 * the circuit, times, and who changed what; overrides are in the share already. Items that say the same are
 * one and the same object, because a term has a hundred thousand of them.
 */
export function marksFromShort({
  id,
  places,
}: Pick<HomeworkSet, 'id' | 'places'>): (of: Learner, short: ShortMark) => PaperMark {
  const known = places.map(() => new Map<string | undefined, Map<number, ItemMark>>());
  const itemAt = (item: ShortItem, index: number): ItemMark => {
    const [earned, answered, , , idea] = item;
    let same = known[index]!.get(idea);
    if (!same) {
      same = new Map();
      known[index]!.set(idea, same);
    }
    // Marks are of whole hundredths.
    const key = Math.round(earned * 100) * ANSWERED.length + answered;
    let found = same.get(key);
    if (!found) {
      found = itemFrom(places[index]!, item);
      same.set(key, found);
    }
    return found;
  };
  return ({ learner, attempt }, short) => ({ set: id, learner, attempt, items: short.map(itemAt) });
}

/** One such mark. */
export const markFromShort = (
  set: Pick<HomeworkSet, 'id' | 'places'>,
  of: Learner,
  short: ShortMark,
): PaperMark => marksFromShort(set)(of, short);
