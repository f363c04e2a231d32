import { type Bank, bank as bankSchema } from '../../shared/bank.ts';
import type { Local } from './local/database.ts';

/**
 * The question bank: what this device has, at once, and the server's newer one for next time; from the server when
 * there is none yet.
 *
 * @throws Error with words for a person when there is neither
 */
export async function loadBank(local: Local): Promise<Bank> {
  const kept = await local.value('bank');
  const fresh = fetchBank(local, kept?.etag ?? null);
  if (kept) {
    fresh.catch(() => undefined);
    return kept.bank;
  }
  const bank = await fresh;
  if (bank) return bank;
  throw new Error(
    'The questions have not been loaded yet. Connect once, then everything works without network.',
  );
}

async function fetchBank(local: Local, etag: string | null): Promise<Bank | undefined> {
  const response = await fetch('/api/bank', etag ? { headers: { 'if-none-match': etag } } : {}).catch(
    () => undefined,
  );
  if (!response?.ok) return undefined;
  const read = bankSchema.safeParse(await response.json());
  if (!read.success) return undefined;
  await local.setValue('bank', { etag: response.headers.get('etag'), bank: read.data });
  return read.data;
}
