import type { Kysely, Migration } from 'kysely';

/** Sets, papers and what belongs to them. */
export const homework: Migration = {
  async up({ schema }: Kysely<unknown>): Promise<void> {
    await schema
      .createTable('sets')
      .addColumn('id', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('class', 'varchar(64)', (column) => column.notNull())
      .addColumn('made_by', 'varchar(64)', (column) => column.notNull())
      .addColumn('made_at', 'bigint', (column) => column.notNull())
      .addColumn('issued_at', 'bigint')
      .addColumn('withdrawn_at', 'bigint')
      .addColumn('wish_json', 'text', (column) => column.notNull())
      .addColumn('set_json', 'text', (column) => column.notNull())
      .execute();
    await schema.createIndex('sets_by_class').on('sets').columns(['class', 'made_at']).execute();
    await schema
      .createTable('papers')
      .addColumn('id', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('code', 'varchar(40)', (column) => column.notNull().unique())
      .addColumn('set', 'varchar(64)', (column) => column.notNull())
      .addColumn('learner', 'varchar(64)', (column) => column.notNull())
      .addColumn('attempt', 'integer', (column) => column.notNull())
      .addColumn('made_at', 'bigint', (column) => column.notNull())
      .addColumn('begun_at', 'bigint')
      .addColumn('submitted_at', 'bigint')
      .addColumn('saves', 'integer', (column) => column.notNull())
      .addColumn('marked_at', 'bigint')
      .addColumn('remembered_at', 'bigint')
      .addColumn('short_json', 'text')
      .addColumn('mark_json', 'text')
      .addColumn('paper_json', 'text', (column) => column.notNull())
      .addUniqueConstraint('papers_by_seat', ['set', 'learner', 'attempt'])
      .execute();
    await schema.createIndex('papers_by_learner').on('papers').columns(['learner']).execute();
    await schema
      .createTable('paper_circuits')
      .addColumn('set', 'varchar(64)', (column) => column.notNull())
      .addColumn('place', 'integer', (column) => column.notNull())
      .addColumn('circuit', 'varchar(120)', (column) => column.notNull())
      .addColumn('paper', 'varchar(64)', (column) => column.notNull())
      .addPrimaryKeyConstraint('paper_circuits_once', ['set', 'place', 'circuit'])
      .execute();
    await schema.createIndex('paper_circuits_by_paper').on('paper_circuits').columns(['paper']).execute();
    await schema
      .createTable('saved_answers')
      .addColumn('paper', 'varchar(64)', (column) => column.notNull())
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('id', 'varchar(64)', (column) => column.notNull())
      .addColumn('item', 'integer', (column) => column.notNull())
      .addColumn('at', 'bigint', (column) => column.notNull())
      .addColumn('seconds', 'double precision')
      .addColumn('answer_json', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('saved_answers_in_order', ['paper', 'number'])
      .addUniqueConstraint('saved_answers_once', ['paper', 'id'])
      .execute();
    await schema
      .createTable('hints')
      .addColumn('paper', 'varchar(64)', (column) => column.notNull())
      .addColumn('item', 'integer', (column) => column.notNull())
      .addColumn('at', 'bigint', (column) => column.notNull())
      .addPrimaryKeyConstraint('hints_once', ['paper', 'item'])
      .execute();
    await schema
      .createTable('overrides')
      .addColumn('paper', 'varchar(64)', (column) => column.notNull())
      .addColumn('item', 'integer', (column) => column.notNull())
      .addColumn('number', 'integer', (column) => column.notNull())
      .addColumn('override_json', 'text', (column) => column.notNull())
      .addPrimaryKeyConstraint('overrides_in_order', ['paper', 'item', 'number'])
      .execute();
  },
};
