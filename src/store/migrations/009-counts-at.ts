import { type Kysely, type Migration, sql } from 'kysely';

interface Answers {
  learner: string;
  number: number;
  skill: string;
  arrived_at: number;
  at: number;
  share: number;
  record_json: string;
  corrected_mark_json: string | null;
  counts_at: number;
  correct: number;
  idea_json: string | null;
}
interface Before {
  answers: Answers;
  recalls: { learner: string; skill: string; recall_json: string; tentative: number };
  histories: { learner: string; latest: number };
}

const AT_ONCE = 200;
/** 2026-01-01 UTC: no clock that is right says less. */
const NEVER_SET = Date.UTC(2026, 0, 1);

interface MarkSeen {
  correct?: unknown;
  misconceptions?: unknown;
}

/** What the mark that holds says in short; of one that can't be read, what the share says. */
function inShort({
  share,
  record_json,
  corrected_mark_json,
}: Answers): Pick<Answers, 'correct' | 'idea_json'> {
  try {
    const { correct, misconceptions } = (
      corrected_mark_json === null ? JSON.parse(record_json).mark : JSON.parse(corrected_mark_json)
    ) as MarkSeen;
    const ideas = Array.isArray(misconceptions) ? misconceptions : [];
    return {
      correct: correct === true ? 1 : 0,
      idea_json: ideas.length === 1 ? JSON.stringify(ideas[0]) : null,
    };
  } catch {
    return { correct: share === 1 ? 1 : 0, idea_json: null };
  }
}

async function fillIn(db: Kysely<Before>): Promise<void> {
  const learners = await db.selectFrom('histories').select('learner').execute();
  for (const { learner } of learners)
    for (let after = 0; ; ) {
      const rows = await db
        .selectFrom('answers')
        .selectAll()
        .where('learner', '=', learner)
        .where('number', '>', after)
        .orderBy('number')
        .limit(AT_ONCE)
        .execute();
      if (rows.length === 0) break;
      for (const row of rows) {
        const short = inShort(row);
        // As the columns are made they say right, and no idea.
        if (short.correct === 1 && short.idea_json === null) continue;
        await db
          .updateTable('answers')
          .set(short)
          .where('learner', '=', learner)
          .where('number', '=', row.number)
          .execute();
      }
      after = rows.at(-1)!.number;
    }
}

/**
 * When an answer counts as given is kept with it; no recall state depends on the moment any more. What lists of answers
 * need of a mark stands beside it, and a history says how often its marks were corrected.
 */
export const countsAt: Migration = {
  async up(db: Kysely<Before>): Promise<void> {
    const { schema } = db;
    await schema
      .alterTable('answers')
      .addColumn('counts_at', 'bigint', (column) => column.notNull().defaultTo(0))
      .execute();
    await schema
      .alterTable('answers')
      .addColumn('correct', 'integer', (column) => column.notNull().defaultTo(1))
      .execute();
    await schema.alterTable('answers').addColumn('idea_json', 'text').execute();
    await schema
      .alterTable('histories')
      .addColumn('latest', 'bigint', (column) => column.notNull().defaultTo(0))
      .execute();
    await schema
      .alterTable('histories')
      .addColumn('corrections', 'integer', (column) => column.notNull().defaultTo(0))
      .execute();
    // 0: when it arrived wasn't noted yet. A clock that was never set says less than this and bounds nothing.
    await db
      .updateTable('answers')
      .set({
        counts_at: sql<number>`case when arrived_at >= ${NEVER_SET} and arrived_at < at then arrived_at else at end`,
      })
      .execute();
    await db
      .updateTable('histories')
      .set({
        latest: sql<number>`coalesce((select max(arrived_at) from answers where answers.learner = histories.learner), 0)`,
      })
      .execute();
    await fillIn(db);
    // Emptied, a state is worked out when it is next wanted.
    await db
      .updateTable('recalls')
      .set({ recall_json: '' })
      .where(({ exists, selectFrom }) =>
        exists(
          selectFrom('answers')
            .select('answers.number')
            .whereRef('answers.learner', '=', 'recalls.learner')
            .whereRef('answers.skill', '=', 'recalls.skill')
            .where(sql<boolean>`answers.counts_at <> answers.at`),
        ),
      )
      .execute();
    await schema.alterTable('recalls').dropColumn('tentative').execute();
    await schema.dropIndex('answers_by_skill').execute();
    await schema
      .createIndex('answers_by_skill')
      .on('answers')
      .columns(['learner', 'skill', 'counts_at', 'number'])
      .execute();
  },
};
