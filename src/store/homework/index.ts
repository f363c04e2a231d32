import type { Kysely } from 'kysely';
import type { Tables } from '../schema.ts';
import { mark, markOf, override, remembered, typed } from './marks.ts';
import {
  begin,
  circuitsIn,
  headById,
  keepPaper,
  paperByCode,
  paperById,
  papersIn,
  papersOf,
  unsubmittedOf,
} from './papers.ts';
import { answersOf, hint, hintsOf, itemsSaved, itemsSavedOn, save, submit } from './saves.ts';
import { changeDraft, closeLater, draft, issue, setById, setsOf, withdraw } from './sets.ts';
import { triedElsewhere, triedIn } from './tried-elsewhere.ts';
import type { HomeworkStore } from './types.ts';

export type {
  Handed,
  HomeworkStore,
  KeptAnswer,
  KeptPaper,
  KeptSet,
  NewOverride,
  NewPaper,
  NewSave,
  NewSet,
  PaperHead,
  PaperKept,
  Saved,
} from './types.ts';

/** Homework on any database that Kysely speaks to. */
export const homeworkOn = (db: Kysely<Tables>, now: () => number): HomeworkStore => ({
  draft: (wanted) => draft(db, wanted, now()),
  changeDraft: (set, wish) => changeDraft(db, set, wish),
  set: (id) => setById(db, id),
  setsOf: (classes) => setsOf(db, classes),
  issue: (id) => issue(db, id, now()),
  closeLater: (id, closesAt) => closeLater(db, id, closesAt, now),
  withdraw: (id) => withdraw(db, id, now()),
  keepPaper: (made) => keepPaper(db, made, now()),
  circuitsIn: (set) => circuitsIn(db, set),
  papersIn: (sets) => papersIn(db, sets),
  papersOf: (learner) => papersOf(db, learner),
  head: (id) => headById(db, id),
  paper: (id) => paperById(db, id),
  paperByCode: (set, code) => paperByCode(db, set, code),
  begin: (paper) => begin(db, paper, now()),
  save: (paper, answers) => save(db, paper, answers, now),
  answersOf: (paper) => answersOf(db, paper),
  itemsSavedOn: (paper) => itemsSavedOn(db, paper),
  itemsSaved: (set) => itemsSaved(db, set),
  hint: (paper, item) => hint(db, paper, item, now),
  hintsOf: (paper) => hintsOf(db, paper),
  submit: (paper) => submit(db, paper, now),
  unsubmittedOf: (learner) => unsubmittedOf(db, learner),
  triedElsewhere: (paper, item, place) => triedElsewhere(db, paper, item, place, now()),
  triedIn: (papers) => triedIn(db, papers),
  mark: (paper, given) => mark(db, paper, given, now()),
  remembered: (paper) => remembered(db, paper, now()),
  markOf: (paper) => markOf(db, paper),
  override: (paper, wanted) => override(db, paper, wanted),
  typed: (paper, first, wanted) => typed(db, paper, first, wanted, now()),
});
