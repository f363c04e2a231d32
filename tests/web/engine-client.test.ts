/** The engine from the page's side, before the page has its words: what it gives arrives, and why it doesn't is said later. */
import { afterEach, expect, it, vi } from 'vitest';
import { NotTold, startEngine } from '../../src/web/engine/client.ts';
import type { Reply, Request } from '../../src/web/engine/messages.ts';
import { fetchWords, words } from '../../src/web/words.ts';

type Listener = (event: { readonly data?: unknown }) => void;

/** A worker that replies at once. */
function replying(reply: (request: Request) => Reply): void {
  vi.stubGlobal(
    'Worker',
    class {
      private readonly listeners = new Map<string, Listener>();
      addEventListener(kind: string, listener: Listener): void {
        this.listeners.set(kind, listener);
      }
      postMessage(request: Request): void {
        this.listeners.get('message')?.({ data: reply(request) });
      }
    },
  );
}

afterEach(() => vi.unstubAllGlobals());

it('gives what the engine gives, though the page has no words yet', async () => {
  replying(({ number }) => ({ number, ok: true, give: { skills: 3 } }));
  const engine = startEngine(() => undefined);
  expect(() => words('first')).toThrow(RangeError);
  expect(await engine.call('open', { bank: { topics: [] } })).toEqual({ skills: 3 });
});

it('says why not once there are words', async () => {
  replying(({ number }) => ({ number, ok: false, missing: true }));
  const missing = await startEngine(() => undefined)
    .call('rest', {})
    .catch((error: unknown) => error);
  const tried: string[] = [];
  replying(({ number }) => ({ number, ok: false, message: '', onOpenPaper: 'a circuit' }));
  const open = await startEngine((circuit) => tried.push(circuit))
    .call('rest', {})
    .catch((error: unknown) => error);
  expect(open).toBeInstanceOf(NotTold);
  expect(tried).toEqual(['a circuit']);
  await fetchWords('first');
  const { engine } = words('first');
  expect([missing, open].map((error) => (error as Error).message)).toEqual([
    engine.partMissing,
    engine.onOpenPaper,
  ]);
});
