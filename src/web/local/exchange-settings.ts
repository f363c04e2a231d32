import type { Settings } from '../../../shared/settings.ts';
import { mergeSettings, sameSettings } from '../../memory/merge-settings.ts';
import type { Local } from './database.ts';
import { type Fetch, json, type SyncResult, sending } from './reply.ts';

/** Of each field the later change holds, here and there. */
export async function exchangeSettings(
  local: Local,
  fetch: Fetch,
  arrivals: { settings(newer: Settings): void },
): Promise<SyncResult> {
  const own = await local.value('settings');
  const said = await json(
    own ? fetch('/api/settings', sending('PUT', own)) : fetch('/api/settings'),
    ({ settings }) => settings,
  );
  if (!said.value) return said.why;
  const there = said.value;
  // Changed again while this was under way: that goes with the next exchange.
  const now = await local.value('settings');
  const merged = now ? mergeSettings(now, there) : there;
  if (!now || !sameSettings(merged, now)) {
    await local.setValue('settings', merged);
    arrivals.settings(merged);
  }
  return 'done';
}
