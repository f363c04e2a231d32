/**
 * A marked paper in as few letters as reports need: what each item earned, whether it was answered, whether a tutor changed
 * it, how large its drawing is, and the wrong idea behind it. A term's reports go through thousands of papers, and a
 * whole mark is a hundred times as long.
 */
import type { HomeworkSet, ItemMark, Paper, PaperItem, PaperMark } from '../../../shared/homework.ts';
import { MISCONCEPTIONS } from '../../misconceptions/index.ts';
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
    return misconceptions.length === 1 ? [...head, misconceptions[0]!.id] : head;
  });

type Idea = ItemMark['mark']['misconceptions'][number];

const IDEAS: ReadonlyMap<string, Idea> = new Map(
  MISCONCEPTIONS.map(({ id, idea, advice }) => [id, { id, idea, advice }]),
);
/** One for all that have none: there are hundreds of thousands of them. */
const NOTHING = Object.freeze<never[]>([]) as never[];
/** An idea that only an earlier version knew has but its name. */
const ideaOf = (id: string): Idea => IDEAS.get(id) ?? { id, idea: id, advice: '' };

/**
 * A mark that reports read as the whole one: marks, answered, ideas. Not in it: parts, explanations, the circuit, times, and
 * who changed what; overrides are in the share already.
 */
export function markFromShort(
  { id, places }: Pick<HomeworkSet, 'id' | 'places'>,
  { learner, attempt }: { readonly learner: string; readonly attempt: number },
  short: ShortMark,
): PaperMark {
  const items = short.map(([earned, answered, , , idea], index): ItemMark => {
    const { skill, marks } = places[index]!;
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
        misconceptions: idea === undefined ? NOTHING : [ideaOf(idea)],
        explanation: NOTHING,
        problems: NOTHING,
      },
      overrides: NOTHING,
    };
  });
  return { set: id, learner, attempt, items };
}
