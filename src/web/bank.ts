import type { Bank } from '../../shared/bank.ts';
import type { Local } from './local/database.ts';

/**
 * The question bank: what this device has, at once, and the server's newer one for next time; from the server when
 * there is none yet. What comes from the page's own server is used as it comes, and kept once it has been checked.
 *
 * @throws Error with words for a person when there is neither
 */
export async function loadBank(local: Local): Promise<Bank> {
  const kept = await local.value('bank');
  const fresh = fetchBank(kept?.etag ?? null);
  const keeping = fresh.then((found) => found && keep(local, found)).catch(() => undefined);
  if (kept) return kept.bank;
  const found = await fresh.catch(() => undefined);
  if (found) return found.bank;
  await keeping;
  throw new Error(
    'The questions have not been loaded yet. Connect once, then everything works without network.',
  );
}

interface Found {
  readonly etag: string | null;
  readonly bank: Bank;
}

async function fetchBank(etag: string | null): Promise<Found | undefined> {
  const response = await fetch('/api/bank', etag ? { headers: { 'if-none-match': etag } } : {});
  if (!response.ok) return undefined;
  return { etag: response.headers.get('etag'), bank: (await response.json()) as Bank };
}

async function keep(local: Local, { etag, bank }: Found): Promise<void> {
  const { bank: schema } = await import('../../shared/bank.ts');
  const read = schema.safeParse(bank);
  if (read.success) await local.setValue('bank', { etag, bank: read.data });
}
