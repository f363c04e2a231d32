/** Sets and papers as they are told. */
import type { HomeworkSet, Paper } from '../../../shared/homework.ts';
import type { SetState, SetView } from '../../../shared/homework-views.ts';
import { markFromShort, paperStateOf, phaseOf, type Total, totalOf } from '../../homework/index.ts';
import type { KeptSet, PaperHead } from '../../store/index.ts';

export const stateOf = ({ set, issuedAt, withdrawnAt }: KeptSet, at: number): SetState =>
  withdrawnAt !== null ? 'withdrawn' : issuedAt === null ? 'draft' : phaseOf(set, at);

export const setView = (kept: KeptSet, at: number): SetView => ({
  ...kept,
  wish: { ...kept.wish },
  state: stateOf(kept, at),
});

export const outOf = ({ places }: HomeworkSet): number => places.reduce((sum, { marks }) => sum + marks, 0);

/** What a paper comes to, overrides included; null until it is marked. */
export const totalIn = (set: HomeworkSet, head: PaperHead): Total | null =>
  head.short === null ? null : totalOf(markFromShort(set, head, head.short));

export const isHandedIn = (set: HomeworkSet, head: PaperHead, at: number): boolean =>
  paperStateOf(set, head, at) === 'handed-in';

/** The paper without what its questions were made from: of no use to who reads it, and none of his business. */
export const withoutSeeds = (paper: Paper): Paper => ({
  ...paper,
  items: paper.items.map((item) => {
    const { seed: _, ...question } = item.question;
    return { ...item, question };
  }),
});
