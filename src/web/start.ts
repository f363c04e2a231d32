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
  const learner = new Learner(local, (fresh) =>
    engine.call('remember', {
      answers: fresh.map(({ id, skill, circuit, at, attempt }) => ({ id, skill, circuit, at, attempt })),
    }),
  );
  const [bank] = await Promise.all([
    loadBank(local).then(async (found) => {
      await engine.call('open', { bank: found });
      return found;
    }),
    learner.load(),
  ]);
  return { local, learner, engine, bank };
}
