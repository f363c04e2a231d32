/** The tables, as Kysely sees them. Texts that end in `json` hold a value of the schema named beside them. */
export interface AnswersTable {
  id: string;
  learner: string;
  /** Order of arrival within the learner, from 1. */
  number: number;
  at: number;
  skill: string;
  circuit: string;
  kind: string;
  grade: string;
  share: number;
  /** `answerRecord` of shared/practice.ts, whole. */
  record_json: string;
}

export interface RecallsTable {
  learner: string;
  skill: string;
  /** `recall` of shared/memory.ts. */
  recall_json: string;
}

export interface Tables {
  answers: AnswersTable;
  recalls: RecallsTable;
}
