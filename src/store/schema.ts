/** The tables, as Kysely sees them. Texts that end in `json` hold a value of the schema named beside them. */
import type { ProofSource } from '../../shared/issued.ts';
import type { HomeworkTables } from './homework/tables.ts';
import type { PeopleTables } from './people/tables.ts';

/** One row for each learner that something was kept about; locking it orders writers. */
export interface HistoriesTable {
  learner: string;
  /** A name of this history; a new one begins when everything was erased. */
  history: string;
  /** How many answers there are, which is the highest number. */
  answers: number;
  /** The latest moment at which one of them arrived, by the clock of this machine. */
  latest: number;
  /** How often marks were corrected: whoever has fetched them fetches them anew. */
  corrections: number;
  /** The same as `learner` where that is a person; the database holds it to be one. */
  person: string | null;
}

/**
 * Answers. `record_json` never changes and is the truth; what stands beside it is taken from it, except that a corrected
 * mark changes `corrected_mark_json`, `share`, `grade`, `attempt_json`, `correct` and `idea`.
 */
export interface AnswersTable {
  learner: string;
  /** Order of arrival within the learner, from 1, without gaps. */
  number: number;
  id: string;
  /** When it was kept, by the clock of this machine; 0 where that wasn't noted yet. */
  arrived_at: number;
  /** When it was given, by the clock of the device. */
  at: number;
  /** When it counts as given: `countsAt` of src/memory. */
  counts_at: number;
  skill: string;
  circuit: string;
  kind: string;
  share: number;
  grade: string;
  /** `attempt` of shared/memory.ts: all that the memory needs, so that it never has to read a whole record. */
  attempt_json: string;
  /** Which form `record_json` has; src/store/record-text.ts knows them. */
  record_version: number;
  /** `answerRecord` of shared/practice.ts, whole. */
  record_json: string;
  /** `mark` of shared/question.ts, where a later solver marks differently. */
  corrected_mark_json: string | null;
  /** 1: everything is right, by the mark that holds. */
  correct: number;
  /** `wrongIdea` of shared/question.ts, where one alone explains the answer. */
  idea: string | null;
  /** Where people sign in: what makes it a proof of what its learner can do; null where it proves nothing. */
  proof: ProofSource | null;
  /** When it counts as given then: never before its question was issued, nor after it arrived. */
  proof_at: number | null;
}

/** Questions issued to learners that haven't been answered; one that was answered is gone. */
export interface IssuedQuestionsTable {
  learner: string;
  id: string;
  skill: string;
  reviews: number;
  issued_at: number;
  until: number;
}

/** Derived from the answers; kept so that it needn't be worked out each time. */
export interface RecallsTable {
  learner: string;
  skill: string;
  /** `recall` of shared/memory.ts; empty where it has to be worked out before it is told. */
  recall_json: string;
}

export interface SettingsTable {
  learner: string;
  /** `settings` of shared/settings.ts. */
  settings_json: string;
}

export interface Tables extends PeopleTables, HomeworkTables {
  histories: HistoriesTable;
  answers: AnswersTable;
  recalls: RecallsTable;
  settings: SettingsTable;
  issued_questions: IssuedQuestionsTable;
}

/** What lets people in for a time. A backup is never put back with these: what was revoked since would work again. */
export const TEMPORARY_TABLES = [
  'sessions',
  'links',
  'tries',
  'throttles',
] as const satisfies readonly (keyof Tables)[];
