import type { Kysely } from 'kysely';
import { type Settings, settings as settingsSchema } from '../../shared/settings.ts';
import { mergeSettings, notAheadOf, sameSettings } from '../memory/index.ts';
import { lockHistory } from './lock-history.ts';
import type { Tables } from './schema.ts';
import type { Whose } from './whose.ts';

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
  { whose, now }: { readonly whose: Whose; readonly now: number },
): Promise<Settings> {
  return db.transaction().execute(async (transaction) => {
    await lockHistory(transaction, learner, whose);
    const kept = await settingsOf(transaction, learner);
    // Compared as it came: one whose clock is ahead still made its change after those that it knew.
    const settings = notAheadOf(mergeSettings(kept, wanted), now);
    if (sameSettings(settings, kept)) return kept;
    const settings_json = JSON.stringify(settings);
    await transaction
      .insertInto('settings')
      .values({ learner, settings_json })
      .onConflict((conflict) => conflict.column('learner').doUpdateSet({ settings_json }))
      .execute();
    return settings;
  });
}
