import type { Kysely, Migration } from 'kysely';

interface Answers {
  learner: string;
  number: number;
  attempt_json: string;
  record_json: string;
  corrected_mark_json: string | null;
}
interface Before {
  answers: Answers;
  recalls: { recall_json: string };
  histories: { learner: string; answers: number; corrections: number };
}

const AT_ONCE = 200;

interface RecordSeen {
  readonly mark?: unknown;
  readonly question?: { readonly choices?: unknown };
}

/** The greatest chance of somebody who guessed to get it all right, of whatever kind it was. */
function luckOf(asked: number, choices: unknown): number {
  if (Array.isArray(choices)) return Math.min(1, 1 / Math.max(1, choices.length) + 0.05);
  return Math.max(0.2, 0.5 ** asked);
}

/** The attempt with what was asked in numbers; null where the mark can't be read, and it stays as it is. */
function counted({ attempt_json, record_json, corrected_mark_json }: Answers): string | null {
  try {
    const { mark, question } = JSON.parse(record_json) as RecordSeen;
    const holds = corrected_mark_json === null ? mark : (JSON.parse(corrected_mark_json) as unknown);
    const { parts } = holds as { parts: readonly { correct?: unknown }[] };
    const said = {
      asked: parts.length,
      right: parts.filter(({ correct }) => correct === true).length,
      luck: luckOf(parts.length, question?.choices),
    };
    return JSON.stringify({ ...(JSON.parse(attempt_json) as object), parts: said });
  } catch {
    return null;
  }
}

/**
 * Attempts say how many parts were asked and were right, which the mark of their record has; all recall states are worked
 * out anew when they are next wanted. A history counts as corrected, so that whoever has fetched it fetches it anew.
 */
export const partsCounted: Migration = {
  async up(db: Kysely<Before>): Promise<void> {
    const learners = await db.selectFrom('histories').select('learner').execute();
    for (const { learner } of learners)
      for (let after = 0; ; ) {
        const rows = await db
          .selectFrom('answers')
          .select(['learner', 'number', 'attempt_json', 'record_json', 'corrected_mark_json'])
          .where('learner', '=', learner)
          .where('number', '>', after)
          .orderBy('number')
          .limit(AT_ONCE)
          .execute();
        if (rows.length === 0) break;
        for (const row of rows) {
          const attempt_json = counted(row);
          if (attempt_json === null) continue;
          await db
            .updateTable('answers')
            .set({ attempt_json })
            .where('learner', '=', learner)
            .where('number', '=', row.number)
            .execute();
        }
        after = rows.at(-1)!.number;
      }
    await db.updateTable('recalls').set({ recall_json: '' }).execute();
    await db
      .updateTable('histories')
      .set(({ eb }) => ({ corrections: eb('corrections', '+', 1) }))
      .where('answers', '>', 0)
      .execute();
  },
};
