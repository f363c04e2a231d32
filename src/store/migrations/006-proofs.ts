import { type Kysely, type Migration, sql } from 'kysely';

interface Before {
  answers: {
    learner: string;
    id: string;
    at: number;
    proof: string | null;
    proof_at: number | null;
  };
  papers: { id: string; learner: string };
}

/**
 * Questions issued ahead, and which answers prove something. Of those that were kept before, only the ones that homework
 * handed over itself do: what else there is was never issued, so anybody could have made it up.
 */
export const proofs: Migration = {
  async up(db: Kysely<Before>): Promise<void> {
    const { schema } = db;
    await schema.alterTable('answers').addColumn('proof', 'varchar(16)').execute();
    await schema.alterTable('answers').addColumn('proof_at', 'bigint').execute();
    await schema
      .createTable('issued_questions')
      .addColumn('learner', 'varchar(64)', (column) =>
        column.notNull().references('people.id').onDelete('cascade'),
      )
      .addColumn('id', 'varchar(32)', (column) => column.notNull())
      .addColumn('skill', 'varchar(64)', (column) => column.notNull())
      .addColumn('reviews', 'integer', (column) => column.notNull())
      .addColumn('issued_at', 'bigint', (column) => column.notNull())
      .addColumn('until', 'bigint', (column) => column.notNull())
      .addPrimaryKeyConstraint('issued_questions_once', ['learner', 'id'])
      .execute();
    await db
      .updateTable('answers')
      .set({ proof: 'homework', proof_at: sql<number>`at` })
      .where(({ exists, selectFrom }) =>
        exists(
          selectFrom('papers')
            .select('papers.id')
            .whereRef('papers.learner', '=', 'answers.learner')
            .where('papers.id', '=', sql<string>`substr(answers.id, 1, 21)`)
            // What homework calls its answers: the paper, a hyphen and the number of the item.
            .where(sql<boolean>`substr(answers.id, 22, 2) between '-0' and '-9'`)
            .where(sql<boolean>`length(answers.id) <= 24`),
        ),
      )
      .execute();
  },
};
