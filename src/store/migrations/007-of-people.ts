import { type Kysely, type Migration, sql } from 'kysely';

/** Histories and papers of people are held to them: where there is no such person any more, none begins again. */
export const ofPeople: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const table of ['histories', 'papers']) {
      await db.schema
        .alterTable(table)
        .addColumn('person', 'varchar(64)', (column) => column.references('people.id').onDelete('cascade'))
        .execute();
      await db.schema.createIndex(`${table}_of_person`).on(table).column('person').execute();
      await sql`update ${sql.table(table)} set person = learner where learner in (select id from people)`.execute(
        db,
      );
    }
  },
};
