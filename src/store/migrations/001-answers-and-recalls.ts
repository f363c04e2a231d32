import type { Kysely, Migration } from 'kysely';

export const answersAndRecalls: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('answers')
      .addColumn('id', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('learner', 'varchar(64)', (column) => column.notNull())
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('at', 'bigint', (column) => column.notNull())
      .addColumn('skill', 'varchar(64)', (column) => column.notNull())
      .addColumn('circuit', 'varchar(120)', (column) => column.notNull())
      .addColumn('kind', 'varchar(32)', (column) => column.notNull())
      .addColumn('grade', 'varchar(16)', (column) => column.notNull())
      .addColumn('share', 'double precision', (column) => column.notNull())
      .addColumn('record_json', 'text', (column) => column.notNull())
      .addUniqueConstraint('answers_in_order', ['learner', 'number'])
      .execute();
    await db.schema
      .createTable('recalls')
      .addColumn('learner', 'varchar(64)', (column) => column.notNull())
      .addColumn('skill', 'varchar(64)', (column) => column.notNull())
      .addColumn('recall_json', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('recalls_key', ['learner', 'skill'])
      .execute();
  },
};
