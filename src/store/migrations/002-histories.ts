import { type Kysely, type Migration, sql } from 'kysely';
import { nanoid } from 'nanoid';

/** The tables as they are between the first migration and this one, as far as they are touched here. */
interface OldAnswers {
  id: string;
  learner: string;
  number: number;
  at: number;
  skill: string;
  circuit: string;
  kind: string;
  grade: string;
  share: number;
  record_json: string;
}
interface NewAnswers extends OldAnswers {
  arrived_at: number;
  attempt_json: string;
  record_version: number;
}
interface Between {
  answers_001: OldAnswers;
  answers: NewAnswers;
  histories: { learner: string; history: string; answers: number };
}

const AT_ONCE = 200;

/** The attempt in a record; of one that can't be read, what its own columns say of it. */
function attemptIn({ record_json, share }: OldAnswers): string {
  try {
    const { attempt } = JSON.parse(record_json) as { attempt?: unknown };
    if (attempt) return JSON.stringify(attempt);
  } catch {
    // What the columns say has to do.
  }
  const help = { hint: false, explanation: false };
  return JSON.stringify({ share, help, secondsUsed: null, secondsExpected: 60 });
}

async function copyAnswers(db: Kysely<Between>): Promise<void> {
  const learners = await db
    .selectFrom('answers_001')
    .select(['learner', sql<number>`max(number)`.as('last')])
    .groupBy('learner')
    .execute();
  for (const { learner, last } of learners) {
    for (let after = 0; after < last; after += AT_ONCE) {
      const rows = await db
        .selectFrom('answers_001')
        .selectAll()
        .where('learner', '=', learner)
        .where('number', '>', after)
        .where('number', '<=', after + AT_ONCE)
        .execute();
      if (rows.length === 0) continue;
      await db
        .insertInto('answers')
        .values(
          rows.map((row) => ({ ...row, arrived_at: 0, attempt_json: attemptIn(row), record_version: 1 })),
        )
        .execute();
    }
    await db.insertInto('histories').values({ learner, history: nanoid(), answers: last }).execute();
  }
}

/** Ids count within a learner; arrival, attempt, the record's version and corrected marks are kept; settings. */
export const histories: Migration = {
  async up(db: Kysely<Between>): Promise<void> {
    const { schema } = db;
    await schema
      .createTable('histories')
      .addColumn('learner', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('history', 'varchar(32)', (column) => column.notNull())
      .addColumn('answers', 'integer', (column) => column.notNull())
      .execute();
    await schema.alterTable('answers').renameTo('answers_001').execute();
    await schema
      .createTable('answers')
      .addColumn('learner', 'varchar(64)', (column) => column.notNull())
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('id', 'varchar(64)', (column) => column.notNull())
      .addColumn('arrived_at', 'bigint', (column) => column.notNull())
      .addColumn('at', 'bigint', (column) => column.notNull())
      .addColumn('skill', 'varchar(64)', (column) => column.notNull())
      .addColumn('circuit', 'varchar(120)', (column) => column.notNull())
      .addColumn('kind', 'varchar(32)', (column) => column.notNull())
      .addColumn('share', 'double precision', (column) => column.notNull())
      .addColumn('grade', 'varchar(16)', (column) => column.notNull())
      .addColumn('attempt_json', 'text', (column) => column.notNull())
      .addColumn('record_version', 'integer', (column) => column.notNull())
      .addColumn('record_json', 'text', (column) => column.notNull())
      .addColumn('corrected_mark_json', 'text')
      .addPrimaryKeyConstraint('answers_by_number', ['learner', 'number'])
      .addUniqueConstraint('answers_by_id', ['learner', 'id'])
      .execute();
    await copyAnswers(db);
    await schema.dropTable('answers_001').execute();
    await schema
      .createIndex('answers_by_skill')
      .on('answers')
      .columns(['learner', 'skill', 'at', 'number'])
      .execute();
    await schema
      .alterTable('recalls')
      .addColumn('tentative', 'integer', (column) => column.notNull().defaultTo(0))
      .execute();
    await schema
      .createTable('settings')
      .addColumn('learner', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('settings_json', 'text', (column) => column.notNull())
      .execute();
  },
};
