import type { Bank } from '../../shared/bank.ts';
import { loadBank } from './bank.ts';
import { type Engine, startEngine } from './engine/client.ts';
import { Learner } from './learner.ts';
import { Local } from './local/database.ts';
import { loadTheme } from './theme.ts';

/** Everything the screens stand on. */
export interface Ground {
  readonly local: Local;
  readonly learner: Learner;
  readonly engine: Engine;
  readonly bank: Bank;
}

/** Opens the device's store, the learner's history, the bank and the engine. Rejects with words for a person. */
export async function start(): Promise<Ground> {
  const engine = startEngine();
  const local = await Local.open().catch(() => {
    throw new Error(
      'This browser does not let the page keep anything, so no answer would be kept. A private window may be why.',
    );
  });
  await loadTheme(local);
  const learner = new Learner(local);
  const [bank] = await Promise.all([loadBank(local), learner.load()]);
  await engine.call('open', { bank });
  return { local, learner, engine, bank };
}
