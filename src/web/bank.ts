import type { Bank } from '../../shared/bank.ts';
import type { Local } from './local/database.ts';
import { PageError } from './page-error.ts';

/** A question bank, and what is left to do about it once the first question stands there. */
export interface LoadedBank {
  readonly bank: Bank;
  /** Keeps the server's newer one for next time, after checking it. */
  readonly keepNewer: () => Promise<void>;
}

/**
 * The question bank: what this device has, at once; from the server when there is none yet. What comes from the page's
 * own server is used as it comes, and kept once it has been checked.
 *
 * @throws PageError with words for a person when there is neither
 */
export async function loadBank(opening: Promise<Local>): Promise<LoadedBank> {
  // Asked for before it is known whether it is needed: a first visit waits for nothing else.
  const fresh = fetchBank().catch(() => undefined);
  const local = await opening;
  const kept = await local.value('bank');
  const keepNewer = async (): Promise<void> => {
    const found = await fresh;
    if (found && (!kept || found.etag === null || found.etag !== kept.etag)) await keep(local, found);
  };
  if (kept) return { bank: kept.bank, keepNewer };
  const found = await fresh;
  if (found) return { bank: found.bank, keepNewer };
  throw new PageError(({ frame }) => frame.questionsMissing);
}

interface FetchedBank {
  readonly etag: string | null;
  readonly bank: Bank;
}

async function fetchBank(): Promise<FetchedBank | undefined> {
  // Where it hasn't changed the browser has it, and the server says so.
  const response = await fetch('/api/bank');
  if (!response.ok) return undefined;
  return { etag: response.headers.get('etag'), bank: (await response.json()) as Bank };
}

async function keep(local: Local, { etag, bank }: FetchedBank): Promise<void> {
  const [{ bank: schema }, { readLoosely }] = await Promise.all([
    import('../../shared/bank.ts'),
    import('./loosely.ts'),
  ]);
  const read = readLoosely(schema, bank);
  if (read) await local.setValue('bank', { etag, bank: read });
}
