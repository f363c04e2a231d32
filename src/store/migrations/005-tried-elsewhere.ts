import type { Kysely, Migration } from 'kysely';

/** Circuits of open papers that were to be marked or run some other way. */
export const triedElsewhere: Migration = {
  async up({ schema }: Kysely<unknown>): Promise<void> {
    await schema
      .createTable('tried_elsewhere')
      .addColumn('paper', 'varchar(64)', (column) => column.notNull())
      .addColumn('item', 'integer', (column) => column.notNull())
      .addColumn('place', 'varchar(16)', (column) => column.notNull())
      .addColumn('first_at', 'bigint', (column) => column.notNull())
      .addColumn('last_at', 'bigint', (column) => column.notNull())
      .addColumn('times', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('tried_elsewhere_once', ['paper', 'item', 'place'])
      .execute();
  },
};
