import type { Kysely, Migration } from 'kysely';
import type { Tables } from './schema.ts';

/** Every change to the tables, oldest first. One that has been released is never changed again. */
export const migrations: Readonly<Record<string, Migration>> = {
  '001-answers-and-recalls': {
    async up(db: Kysely<Tables>): Promise<void> {
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
  },
};
