import type { Kysely, Migration } from 'kysely';

/** People and their classes, sessions and links, counted tries, and the secret of the installation. */
export const people: Migration = {
  async up({ schema }: Kysely<unknown>): Promise<void> {
    await schema
      .createTable('people')
      .addColumn('id', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('name', 'varchar(160)', (column) => column.notNull())
      .addColumn('role', 'varchar(16)', (column) => column.notNull())
      .addColumn('sign_in', 'varchar(40)', (column) => column.unique())
      .addColumn('password_hash', 'varchar(200)')
      .addColumn('created_at', 'bigint', (column) => column.notNull())
      .execute();
    await schema
      .createTable('classes')
      .addColumn('id', 'varchar(64)', (column) => column.primaryKey())
      .addColumn('title', 'varchar(240)', (column) => column.notNull())
      .addColumn('intake', 'varchar(120)')
      .addColumn('joining_code', 'varchar(8)', (column) => column.notNull().unique())
      .addColumn('joining_open', 'integer', (column) => column.notNull())
      .addColumn('created_at', 'bigint', (column) => column.notNull())
      .addColumn('ended_at', 'bigint')
      .execute();
    await schema
      .createTable('memberships')
      .addColumn('class', 'varchar(64)', (column) =>
        column.notNull().references('classes.id').onDelete('cascade'),
      )
      .addColumn('person', 'varchar(64)', (column) =>
        column.notNull().references('people.id').onDelete('cascade'),
      )
      .addColumn('manner', 'varchar(16)', (column) => column.notNull())
      .addColumn('joined_at', 'bigint', (column) => column.notNull())
      .addPrimaryKeyConstraint('memberships_key', ['class', 'person'])
      .execute();
    await schema.createIndex('memberships_of').on('memberships').column('person').execute();
    await schema
      .createTable('sessions')
      .addColumn('token_hash', 'varchar(43)', (column) => column.primaryKey())
      .addColumn('id', 'varchar(64)', (column) => column.notNull().unique())
      .addColumn('person', 'varchar(64)', (column) =>
        column.notNull().references('people.id').onDelete('cascade'),
      )
      .addColumn('begun_at', 'bigint', (column) => column.notNull())
      .addColumn('seen_at', 'bigint', (column) => column.notNull())
      .addColumn('until', 'bigint', (column) => column.notNull())
      .addColumn('device', 'varchar(60)', (column) => column.notNull())
      .execute();
    await schema.createIndex('sessions_of').on('sessions').column('person').execute();
    await schema.createIndex('sessions_until').on('sessions').column('until').execute();
    await schema
      .createTable('links')
      .addColumn('token_hash', 'varchar(43)', (column) => column.primaryKey())
      .addColumn('person', 'varchar(64)', (column) =>
        column.notNull().unique().references('people.id').onDelete('cascade'),
      )
      .addColumn('until', 'bigint', (column) => column.notNull())
      .execute();
    await schema
      .createTable('tries')
      .addColumn('key', 'varchar(43)', (column) => column.notNull())
      .addColumn('window_start', 'bigint', (column) => column.notNull())
      .addColumn('count', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('tries_key', ['key', 'window_start'])
      .execute();
    await schema
      .createTable('installation')
      .addColumn('name', 'varchar(40)', (column) => column.primaryKey())
      .addColumn('value', 'varchar(200)', (column) => column.notNull())
      .execute();
  },
};
