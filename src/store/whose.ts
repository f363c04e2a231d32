/**
 * Whose something is that is kept: a person's, who has to be there, or anybody's, as on a machine where nobody signs in.
 */
export type Whose = 'person' | 'anybody';

/** Somebody who isn't there any more: what is theirs can't be kept. */
export class NoSuchPerson extends Error {
  constructor(cause?: unknown) {
    super('no-such-person', { cause });
  }
}

/** Foreign keys that hold nothing, as both databases say it (sqlite.org/rescode.html; appendix A of PostgreSQL's manual). */
const HOLDS_NOTHING = new Set(['SQLITE_CONSTRAINT_FOREIGNKEY', '23503']);

/** Does what names a person; throws `NoSuchPerson` where there is none. */
export async function naming<T>(work: Promise<T>): Promise<T> {
  try {
    return await work;
  } catch (error) {
    if (error instanceof Error && 'code' in error && HOLDS_NOTHING.has(String(error.code)))
      throw new NoSuchPerson(error);
    throw error;
  }
}
