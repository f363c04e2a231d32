import type {
  HomeworkSet,
  Override,
  Paper,
  PaperMark,
  SavedAnswer,
  TriedElsewhere,
  TriedPlace,
} from '../../../shared/homework.ts';
import type { HomeworkWish } from '../../../shared/homework-views.ts';
import type { Answer } from '../../../shared/question.ts';
import type { ShortMark } from '../../homework/index.ts';
import type { Whose } from '../whose.ts';

export interface KeptSet {
  readonly set: HomeworkSet;
  readonly wish: HomeworkWish;
  readonly class: string;
  readonly madeBy: string;
  readonly madeAt: number;
  readonly issuedAt: number | null;
  readonly withdrawnAt: number | null;
}

export interface NewSet {
  readonly set: HomeworkSet;
  readonly wish: HomeworkWish;
  readonly class: string;
  readonly madeBy: string;
}

/** A paper without what is on it. */
export interface PaperHead {
  readonly id: string;
  readonly code: string;
  readonly set: string;
  readonly learner: string;
  readonly attempt: number;
  readonly madeAt: number;
  readonly begunAt: number | null;
  readonly submittedAt: number | null;
  readonly saves: number;
  readonly markedAt: number | null;
  readonly rememberedAt: number | null;
  /** With overrides; null until it is marked. */
  readonly short: ShortMark | null;
}

export interface KeptPaper extends PaperHead {
  readonly paper: Paper;
}

export interface NewPaper {
  /** Whether its learner has to be a person who is there; anybody unless it is given. */
  readonly whose?: Whose;
  readonly id: string;
  readonly code: string;
  readonly paper: Paper;
}

/** `already`: this learner has a paper for this attempt. */
export type PaperKept =
  | { readonly result: 'made' | 'already'; readonly head: PaperHead }
  /** Somebody has one of the circuits in the same place: another one has to be found. */
  | { readonly result: 'circuit-taken' }
  | { readonly result: 'code-taken' };

export interface NewSave {
  readonly id: string;
  readonly item: number;
  readonly answer: Answer;
  readonly secondsUsed: number | null;
}

export interface KeptAnswer extends SavedAnswer {
  readonly id: string;
  readonly number: number;
}

/** One for each, in order; or none at all because the paper takes no more. */
export type Saved =
  | {
      readonly result: 'saved';
      readonly at: number;
      readonly kept: readonly { readonly kept: boolean; readonly number: number }[];
    }
  | { readonly result: 'closed' | 'submitted' };

/** `closed`: it is too late; what was saved counts. */
export type Handed =
  | { readonly result: 'submitted' | 'already'; readonly submittedAt: number }
  | { readonly result: 'closed' };

/** A tutor's own marks for some items of a paper. */
export interface NewOverride {
  readonly item: number;
  readonly override: Override;
  /** How many the item has to have already; whatever it has unless it is given. */
  readonly known?: number;
}

/**
 * Homework as it is kept. Everything may be called by several programs at once. What the database refuses is thrown, as
 * everywhere in the store; whether somebody may do a thing at all is asked elsewhere.
 */
export interface HomeworkStore {
  draft(wanted: NewSet): Promise<KeptSet>;
  /** False where it isn't a draft any more, or isn't there. */
  changeDraft(set: HomeworkSet, wish: HomeworkWish): Promise<boolean>;
  set(id: string): Promise<KeptSet | null>;
  /** Sets of these classes, the newest first. */
  setsOf(classes: readonly string[]): Promise<readonly KeptSet[]>;
  /** Issues it once; null where there is no such set, or it was withdrawn. */
  issue(id: string): Promise<KeptSet | null>;
  /** Moves the closing time of an issued set to a later moment; false where it isn't issued, has closed, or closes later. */
  closeLater(id: string, closesAt: number): Promise<boolean>;
  /** Erases a draft, withdraws what was issued; null where there is no such set. */
  withdraw(id: string): Promise<'erased' | 'withdrawn' | null>;

  /**
   * Keeps a paper with its circuits, all or nothing. That no two papers of a set have one circuit in one place is seen to
   * by the database, whoever makes them at the same time.
   */
  keepPaper(made: NewPaper): Promise<PaperKept>;
  /** The circuits that papers of a set have, by place. */
  circuitsIn(set: string): Promise<ReadonlyMap<number, ReadonlySet<string>>>;
  /** The papers of some sets, by set, learner and attempt. */
  papersIn(sets: readonly string[]): Promise<readonly PaperHead[]>;
  /** The papers of one learner. */
  papersOf(learner: string): Promise<readonly PaperHead[]>;
  /** A paper without what is on it, which takes a hundredth of the time. */
  head(id: string): Promise<PaperHead | null>;
  paper(id: string): Promise<KeptPaper | null>;
  paperByCode(set: string, code: string): Promise<KeptPaper | null>;
  /** Notes that it was begun, once; gives when. */
  begin(paper: string): Promise<number>;

  /** Saves answers, each once by its id, in order; those kept before are told also when it is too late for others. */
  save(paper: string, answers: readonly NewSave[]): Promise<Saved>;
  answersOf(paper: string): Promise<readonly KeptAnswer[]>;
  /** Of how many different items of a paper something was saved. */
  itemsSavedOn(paper: string): Promise<number>;
  /** The same by paper. */
  itemsSaved(set: string): Promise<ReadonlyMap<string, number>>;
  /** Notes that the hint was asked for, unless the paper takes no more. */
  hint(paper: string, item: number): Promise<'noted' | 'closed' | 'submitted'>;
  hintsOf(paper: string): Promise<readonly number[]>;
  submit(paper: string): Promise<Handed>;

  /** Papers of a learner that are not handed in, of sets that were issued and not withdrawn; also those not begun. */
  unsubmittedOf(learner: string): Promise<readonly { readonly paper: PaperHead; readonly kept: KeptSet }[]>;
  /** Notes that an item's circuit was to be marked or run elsewhere while its paper could be worked on. */
  triedElsewhere(paper: string, item: number, place: TriedPlace): Promise<void>;
  /** What was noted, by paper; only papers of which something was. */
  triedIn(papers: readonly string[]): Promise<ReadonlyMap<string, readonly TriedElsewhere[]>>;

  /** Keeps the mark, once; false where there is one already, or where more was saved than it was made from. */
  mark(paper: KeptPaper, mark: PaperMark): Promise<boolean>;
  remembered(paper: string): Promise<void>;
  /** The mark with its overrides; null until it is marked. */
  markOf(paper: string): Promise<PaperMark | null>;
  /** Adds tutors' marks to those that are there, all or none; false until it is marked, `changed` where others were added. */
  override(paper: string, overrides: readonly NewOverride[]): Promise<boolean | 'changed'>;
  /**
   * Keeps the marks of a paper that was written on paper: hands it in and marks it, where that wasn't done, and adds the
   * tutor's marks, all or nothing.
   */
  typed(paper: string, mark: PaperMark, overrides: readonly NewOverride[]): Promise<void>;
}
