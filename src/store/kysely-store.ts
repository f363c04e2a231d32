import type { Kysely, Transaction } from 'kysely';
import { nanoid } from 'nanoid';
import type { Recall } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import type { Settings } from '../../shared/settings.ts';
import type { Words } from '../words/index.ts';
import type { Backend } from './backend.ts';
import { checkLearner, checkOrphans } from './check-store.ts';
import { correctMarksOf } from './correct-marks.ts';
import { putRecalls, rebuildRecalls, standingOf } from './derive-recalls.ts';
import { eraseClass, erasePerson, erasePractice } from './erase.ts';
import { linesAfter } from './history-lines.ts';
import { type HomeworkStore, homeworkOn } from './homework/index.ts';
import { type IssuedQuestions, issuedQuestionsOn } from './issued-questions.ts';
import { keepAnswers } from './keep-answers.ts';
import { putSettings, settingsOf } from './keep-settings.ts';
import { exportPieces } from './learner-export.ts';
import { lockHistory } from './lock-history.ts';
import { type People, peopleOn } from './people/index.ts';
import { circuitsSeenBy, proofsOf, provingAnswersOf } from './proofs.ts';
import { entriesAfter, entryOf, rowsAfter } from './read-entries.ts';
import { type Tables, TEMPORARY_TABLES } from './schema.ts';
import type {
  Corrected,
  EntryPage,
  Fault,
  Found,
  Kept,
  LearnerSummary,
  LinePage,
  Progress,
  Proof,
  ProvingAnswer,
  ProvingLine,
  StandingOf,
  Store,
} from './types.ts';
import type { Whose } from './whose.ts';

/** The store on any database that Kysely speaks to; what only one of them has is in its backend. */
export class KyselyStore implements Store {
  readonly kind: Store['kind'];
  readonly people: People;
  readonly homework: HomeworkStore;
  readonly issued: IssuedQuestions;
  private readonly db: Kysely<Tables>;
  private readonly backend: Backend;
  private readonly now: () => number;

  constructor(db: Kysely<Tables>, backend: Backend, now: () => number) {
    this.kind = backend.kind;
    this.db = db;
    this.backend = backend;
    this.now = now;
    this.people = peopleOn(db, now);
    this.homework = homeworkOn(db, now);
    this.issued = issuedQuestionsOn(db, now);
  }

  async keepAnswers(
    records: readonly AnswerRecord[],
    found: ReadonlyMap<AnswerRecord, Found> = new Map(),
    proofs: ReadonlyMap<AnswerRecord, Proof> = new Map(),
    whose: Whose = 'anybody',
  ): Promise<readonly Kept[]> {
    return records.length === 0
      ? []
      : keepAnswers(this.db, records, { found, proofs, whose, now: this.now() });
  }

  async keepAnswer(record: AnswerRecord): Promise<boolean> {
    const [result] = await this.keepAnswers([record]);
    return result!.kept;
  }

  async answersOf(learner: string): Promise<readonly AnswerRecord[]> {
    const rows = await rowsAfter(this.db, learner, 0, Number.MAX_SAFE_INTEGER);
    return rows.map(entryOf).flatMap((entry) => (entry.kind === 'answer' ? [entry.record] : []));
  }

  linesAfter(learner: string, after: number, limit: number): Promise<LinePage> {
    return linesAfter(this.db, learner, after, limit);
  }

  proofsOf(learner: string): Promise<readonly ProvingLine[]> {
    return proofsOf(this.db, learner);
  }

  provingAnswersOf(learner: string, circuits: readonly string[]): Promise<readonly ProvingAnswer[]> {
    return provingAnswersOf(this.db, learner, circuits);
  }

  circuitsSeenBy(learner: string): Promise<ReadonlySet<string>> {
    return circuitsSeenBy(this.db, learner);
  }

  entriesAfter(learner: string, after: number, limit: number): Promise<EntryPage> {
    return entriesAfter(this.db, learner, after, limit);
  }

  async recallsOf(learner: string): Promise<ReadonlyMap<string, Recall>> {
    return (await this.standingOf(learner)).recalls;
  }

  async standingOf(learner: string): Promise<StandingOf> {
    const standing = await standingOf(this.db, learner);
    if (standing) return standing;
    await this.rebuildRecalls(learner);
    return (await standingOf(this.db, learner))!;
  }

  async replaceRecalls(learner: string, recalls: ReadonlyMap<string, Recall>): Promise<void> {
    await this.db.transaction().execute(async (transaction) => {
      await lockHistory(transaction, learner);
      await transaction.deleteFrom('recalls').where('learner', '=', learner).execute();
      await putRecalls(transaction, learner, recalls);
    });
  }

  async rebuildRecalls(learner: string): Promise<void> {
    await this.db.transaction().execute(async (transaction) => {
      await lockHistory(transaction, learner);
      await rebuildRecalls(transaction, learner);
    });
  }

  settingsOf(learner: string): Promise<Settings> {
    return settingsOf(this.db, learner);
  }

  putSettings(learner: string, settings: Settings, whose: Whose = 'anybody'): Promise<Settings> {
    return putSettings(this.db, learner, settings, { whose, now: this.now() });
  }

  learners(db: Kysely<Tables> = this.db): Promise<readonly LearnerSummary[]> {
    return db.selectFrom('histories').select(['learner', 'answers']).orderBy('learner').execute();
  }

  exportOf(learner: string, words: Words): AsyncIterable<string> {
    return exportPieces(this.db, this, learner, { words, now: this.now() });
  }

  erase(learner: string): Promise<{ readonly answers: number }> {
    return this.erasing((transaction) => erasePerson(transaction, learner));
  }

  erasePractice(learner: string): Promise<{ readonly answers: number }> {
    return this.erasing((transaction) => erasePractice(transaction, learner));
  }

  eraseClass(id: string): Promise<void> {
    return this.erasing((transaction) => eraseClass(transaction, id));
  }

  /** Erases in one transaction, and then what the database itself still has of it. */
  private async erasing<T>(work: (transaction: Transaction<Tables>) => Promise<T>): Promise<T> {
    const result = await this.db.transaction().execute(work);
    // It is erased, and is told so, also where its remains can't be cleared out at this moment.
    await this.backend.afterErase().catch(() => undefined);
    return result;
  }

  async correctMarks(
    markAgain: (record: AnswerRecord) => Mark | null,
    progress?: Progress,
  ): Promise<Corrected> {
    const changed: Corrected['changed'][number][] = [];
    let marked = 0;
    let left = 0;
    await this.eachLearner(progress, async ({ learner }) => {
      const one = await correctMarksOf(this.db, learner, markAgain);
      changed.push(...one.changed);
      marked += one.marked;
      left += one.left;
    });
    return { marked, changed, left };
  }

  async renameHistories(): Promise<void> {
    await this.db.transaction().execute(async (transaction) => {
      for (const { learner } of await this.learners(transaction))
        await transaction
          .updateTable('histories')
          .set({ history: nanoid() })
          .where('learner', '=', learner)
          .execute();
      for (const table of TEMPORARY_TABLES) await transaction.deleteFrom(table).execute();
    });
  }

  async check(progress?: Progress): Promise<readonly Fault[]> {
    const structure = await this.backend.structureFaults();
    const faults = structure.map((found): Fault => ({ learner: null, fault: { says: 'database', found } }));
    faults.push(...(await checkOrphans(this.db)));
    await this.eachLearner(progress, async (learner) => {
      faults.push(...(await checkLearner(this.db, learner)));
    });
    return faults;
  }

  private async eachLearner(
    progress: Progress | undefined,
    work: (learner: LearnerSummary) => Promise<void>,
  ): Promise<void> {
    const learners = await this.learners();
    for (const [done, learner] of learners.entries()) {
      await work(learner);
      progress?.(done + 1, learners.length);
    }
  }

  async ping(): Promise<void> {
    await this.db.selectFrom('histories').select('learner').limit(1).execute();
  }

  backup(file: string, progress?: Progress, signal?: AbortSignal): Promise<void> {
    return this.backend.backup(file, progress, signal);
  }

  async close(): Promise<void> {
    await this.backend.close?.();
    await this.db.destroy();
  }
}
