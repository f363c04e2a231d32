import type { Kysely, Migration } from 'kysely';

/** How long who has tried wrongly has to wait before the next try. */
export const throttles: Migration = {
  async up({ schema }: Kysely<unknown>): Promise<void> {
    await schema
      .createTable('throttles')
      .addColumn('key', 'varchar(43)', (column) => column.primaryKey())
      .addColumn('wrong', 'integer', (column) => column.notNull())
      .addColumn('wait_until', 'bigint', (column) => column.notNull())
      .addColumn('seen_at', 'bigint', (column) => column.notNull())
      .execute();
    await schema.createIndex('throttles_seen').on('throttles').column('seen_at').execute();
  },
};
