import type { Kysely } from 'kysely';
import { type Settings, settings as settingsSchema } from '../../shared/settings.ts';
import { lockHistory } from './lock-history.ts';
import type { Tables } from './schema.ts';

function settingsIn(text: string | undefined): Settings {
  try {
    return settingsSchema.parse(JSON.parse(text ?? '{}'));
  } catch {
    return settingsSchema.parse({});
  }
}

/** See `Store.settingsOf`. */
export async function settingsOf(db: Kysely<Tables>, learner: string): Promise<Settings> {
  const row = await db
    .selectFrom('settings')
    .select('settings_json')
    .where('learner', '=', learner)
    .executeTakeFirst();
  return settingsIn(row?.settings_json);
}

/** See `Store.putSettings`. */
export function putSettings(
  db: Kysely<Tables>,
  learner: string,
  wanted: Settings,
  now: number,
): Promise<Settings> {
  return db.transaction().execute(async (transaction) => {
    await lockHistory(transaction, learner);
    const kept = await settingsOf(transaction, learner);
    if (kept.changedAt > wanted.changedAt) return kept;
    // A device whose clock is ahead must not have the last word until its date has come.
    const settings = { ...wanted, changedAt: Math.min(wanted.changedAt, now) };
    const settings_json = JSON.stringify(settings);
    await transaction
      .insertInto('settings')
      .values({ learner, settings_json })
      .onConflict((conflict) => conflict.column('learner').doUpdateSet({ settings_json }))
      .execute();
    return settings;
  });
}
