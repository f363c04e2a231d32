/** What is kept, on SQLite or PostgreSQL. */
export { failureOf, StoreFailure, type StoreFailureCode, type StoreFailureSaid } from './failures.ts';
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
} from './homework/index.ts';
export { ISSUED_LASTS, type IssuedQuestions } from './issued-questions.ts';
export { newId } from './new-id.ts';
export { openStore, type StorePlace, storeFile } from './open-store.ts';
export { others } from './others.ts';
export {
  type AddedPerson,
  type ClassChange,
  type JoinRefusal,
  LINK_LASTS,
  type MadeLink,
  type NewPerson,
  type People,
  SESSION_LASTS,
  type SessionHolder,
  type SessionView,
  type TakenRoster,
  type TryLimit,
  type WantedMember,
} from './people/index.ts';
export { openPostgresStore } from './postgres.ts';
export { sameMark } from './same-mark.ts';
export { openSqliteStore, type StoreOptions } from './sqlite.ts';
export type {
  AnswerEntry,
  Corrected,
  EntryPage,
  Fault,
  Found,
  Kept,
  LearnerSummary,
  Progress,
  Proof,
  ProvingAnswer,
  ProvingLine,
  Store,
} from './types.ts';
export { NoSuchPerson, type Whose } from './whose.ts';
