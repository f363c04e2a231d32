import type { Kysely, Migration } from 'kysely';

interface Answers {
  idea_json: string | null;
  idea: string | null;
}

/** The name of the idea that a text of the version before holds; null where it holds none. */
function nameIn(text: string): string | null {
  try {
    const { id } = JSON.parse(text) as { id?: unknown };
    return typeof id === 'string' ? id : null;
  } catch {
    return null;
  }
}

/** Beside an answer stands the name of the idea that explains it, and no words: those are the reader's language's. */
export const ideasByName: Migration = {
  async up(db: Kysely<{ answers: Answers }>): Promise<void> {
    await db.schema.alterTable('answers').addColumn('idea', 'text').execute();
    // There are as many texts as ideas, and their wordings.
    const texts = await db
      .selectFrom('answers')
      .select('idea_json')
      .distinct()
      .where('idea_json', 'is not', null)
      .execute();
    for (const { idea_json } of texts)
      await db
        .updateTable('answers')
        .set({ idea: nameIn(idea_json!) })
        .where('idea_json', '=', idea_json)
        .execute();
    await db.schema.alterTable('answers').dropColumn('idea_json').execute();
  },
};
