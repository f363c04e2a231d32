import { type Kysely, Migrator, sql } from 'kysely';
import { type Recall, recall as recallSchema } from '../../shared/memory.ts';
import { type AnswerRecord, answerRecord } from '../../shared/practice.ts';
import { migrations } from './migrations.ts';
import type { Tables } from './schema.ts';
import type { Store } from './types.ts';

/** Brings the tables up to date; throws when a migration fails, and the tables are then as before. */
export async function migrate(db: Kysely<Tables>): Promise<void> {
  const { error } = await new Migrator({
    db,
    provider: { getMigrations: async () => migrations },
  }).migrateToLatest();
  if (error) throw error;
}

/** The store on any database that Kysely speaks to. Rows are checked when they are read. */
export class KyselyStore implements Store {
  private readonly db: Kysely<Tables>;

  constructor(db: Kysely<Tables>) {
    this.db = db;
  }

  async keepAnswer(record: AnswerRecord, recall: Recall): Promise<boolean> {
    return this.db.transaction().execute(async (transaction) => {
      const known = await transaction
        .selectFrom('answers')
        .select('id')
        .where('id', '=', record.id)
        .executeTakeFirst();
      if (known) return false;
      await transaction
        .insertInto('answers')
        .values(({ selectFrom }) => ({
          id: record.id,
          learner: record.learner,
          number: selectFrom('answers')
            .where('learner', '=', record.learner)
            .select(sql<number>`coalesce(max(number), 0) + 1`.as('next')),
          at: record.at,
          skill: record.skill,
          circuit: record.circuit,
          kind: record.question.kind,
          grade: record.grade,
          share: record.mark.share,
          record_json: JSON.stringify(record),
        }))
        .execute();
      await putRecall(transaction, record.learner, record.skill, recall);
      return true;
    });
  }

  async answersOf(learner: string): Promise<readonly AnswerRecord[]> {
    const rows = await this.db
      .selectFrom('answers')
      .select('record_json')
      .where('learner', '=', learner)
      .orderBy('number')
      .execute();
    return rows.map(({ record_json }) => answerRecord.parse(JSON.parse(record_json)));
  }

  async recallsOf(learner: string): Promise<ReadonlyMap<string, Recall>> {
    const rows = await this.db
      .selectFrom('recalls')
      .select(['skill', 'recall_json'])
      .where('learner', '=', learner)
      .execute();
    return new Map(
      rows.map(({ skill, recall_json }) => [skill, recallSchema.parse(JSON.parse(recall_json))]),
    );
  }

  async replaceRecalls(learner: string, recalls: ReadonlyMap<string, Recall>): Promise<void> {
    await this.db.transaction().execute(async (transaction) => {
      await transaction.deleteFrom('recalls').where('learner', '=', learner).execute();
      for (const [skill, recall] of recalls) await putRecall(transaction, learner, skill, recall);
    });
  }

  async close(): Promise<void> {
    await this.db.destroy();
  }
}

async function putRecall(db: Kysely<Tables>, learner: string, skill: string, recall: Recall): Promise<void> {
  const recall_json = JSON.stringify(recall);
  await db
    .insertInto('recalls')
    .values({ learner, skill, recall_json })
    .onConflict((conflict) => conflict.columns(['learner', 'skill']).doUpdateSet({ recall_json }))
    .execute();
}
