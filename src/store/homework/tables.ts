/** The tables of homework, as Kysely sees them. Texts that end in `json` hold a value of the schema named beside them. */
import type { TriedPlace } from '../../../shared/homework.ts';

/** Sets: drafts, issued and withdrawn ones. */
export interface SetsTable {
  id: string;
  class: string;
  /** `homeworkWish` of shared/homework-views.ts: what the tutor chose. */
  wish_json: string;
  /** `homeworkSet` of shared/homework.ts: what follows from it. Never changes once it is issued. */
  set_json: string;
  made_by: string;
  made_at: number;
  issued_at: number | null;
  withdrawn_at: number | null;
}

/** One learner's paper of a set for one attempt. The long texts stand last, so that lists needn't read past them. */
export interface PapersTable {
  id: string;
  /** What is printed on it, and typed to find it again. */
  code: string;
  set: string;
  learner: string;
  /** The same where that is a person; the database holds it to be one. */
  person: string | null;
  attempt: number;
  made_at: number;
  begun_at: number | null;
  submitted_at: number | null;
  /** How many answers were saved, which is the highest number; writing it orders who saves and who submits. */
  saves: number;
  marked_at: number | null;
  /** When its answers went to the learner's memory. */
  remembered_at: number | null;
  /** `ShortMark` of src/homework: the mark with overrides, for lists and reports. */
  short_json: string | null;
  /** `paperMark` of shared/homework.ts as it was first given, without overrides. */
  mark_json: string | null;
  /** `paper` of shared/homework.ts. */
  paper_json: string;
}

/** Its key lets no two papers of a set have the same circuit in the same place. */
export interface PaperCircuitsTable {
  set: string;
  place: number;
  circuit: string;
  paper: string;
}

/** Every answer that was saved on the way; rows are never changed. */
export interface SavedAnswersTable {
  paper: string;
  /** From 1, without gaps, in the order in which they were saved. */
  number: number;
  /** Made where the answer was given. */
  id: string;
  item: number;
  /** By the clock of the server; never before that of the number before. */
  at: number;
  seconds: number | null;
  /** `answer` of shared/question.ts. */
  answer_json: string;
}

/** Hints that were asked for. */
export interface HintsTable {
  paper: string;
  item: number;
  at: number;
}

/** Where the circuit of an item that was still open was to be marked or run some other way. */
export interface TriedElsewhereTable {
  paper: string;
  item: number;
  /** `triedPlace` of shared/homework.ts. */
  place: TriedPlace;
  first_at: number;
  last_at: number;
  times: number;
}

/** Tutors' own marks. */
export interface OverridesTable {
  paper: string;
  item: number;
  /** From 1; the highest one holds. */
  number: number;
  /** `override` of shared/homework.ts. */
  override_json: string;
}

export interface HomeworkTables {
  sets: SetsTable;
  papers: PapersTable;
  paper_circuits: PaperCircuitsTable;
  saved_answers: SavedAnswersTable;
  hints: HintsTable;
  overrides: OverridesTable;
  tried_elsewhere: TriedElsewhereTable;
}
