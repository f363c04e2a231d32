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
  /** Called once the first question stands there: from then on the page is in step with the server. */
  settle(): void;
}

/** Opens the device's store, the learner's history, the bank and the engine. Rejects with words for a person. */
export async function start(): Promise<Ground> {
  const engine = startEngine();
  const opening = Local.open();
  const banking = loadBank(opening).then(async (loaded) => {
    await engine.call('open', { bank: loaded.bank });
    return loaded;
  });
  const local = await opening;
  const learner = new Learner(local, (fresh) =>
    engine.call('remember', {
      answers: fresh.map(({ id, skill, circuit, at, attempt }) => ({ id, skill, circuit, at, attempt })),
    }),
  );
  const [{ bank, keepNewer }] = await Promise.all([banking, learner.load(), loadTheme(local)]);
  const settle = (): void => {
    learner.keepInStep();
    // Installed, it is meant to work for weeks: the browser shouldn't throw its store away when space is short.
    if (matchMedia('(display-mode: standalone)').matches) navigator.storage.persist().catch(() => undefined);
    keepNewer().catch(() => undefined);
  };
  return { local, learner, engine, bank, settle };
}
