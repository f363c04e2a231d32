import { createHmac, randomBytes } from 'node:crypto';
import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../schema.ts';

const SECRET = 'secret';

/** 32 random bytes, made when they are first wanted and the same ever after, for every server on this store. */
async function secretOf(db: Kysely<Tables>): Promise<Buffer> {
  const read = () =>
    db.selectFrom('installation').select('value').where('name', '=', SECRET).executeTakeFirst();
  const known = await read();
  if (known) return Buffer.from(known.value, 'base64url');
  await db
    .insertInto('installation')
    .values({ name: SECRET, value: randomBytes(32).toString('base64url') })
    .onConflict((conflict) => conflict.column('name').doNothing())
    .execute();
  return Buffer.from((await read())!.value, 'base64url');
}

/** Makes a keyed hash: the same for the same text, and without the secret nobody can tell the text or make another one's. */
export type Keyer = (purpose: string, text: string) => Buffer;

async function keyerOn(db: Kysely<Tables>): Promise<Keyer> {
  const secret = await secretOf(db);
  return (purpose, text) => createHmac('sha256', secret).update(`${purpose}|${text}`).digest();
}

/** Keeps everybody else away who does the same, until the transaction ends. It has to be the first thing in it. */
export async function lockInstallation(db: Transaction<Tables>): Promise<void> {
  await db
    .insertInto('installation')
    .values({ name: 'lock', value: '' })
    .onConflict((conflict) => conflict.column('name').doUpdateSet({ value: '' }))
    .execute();
}

export const installationOn = (db: Kysely<Tables>) => ({
  /** See `secretOf`. It never leaves the server. */
  secret: (): Promise<Buffer> => secretOf(db),
  keyed: async (purpose: string, text: string): Promise<Buffer> => (await keyerOn(db))(purpose, text),
  /** For many. */
  keyer: (): Promise<Keyer> => keyerOn(db),
});

export type Installation = ReturnType<typeof installationOn>;
