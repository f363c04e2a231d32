import type { Bank } from '../../shared/bank.ts';
import { loadBank } from './bank.ts';
import { type Engine, startEngine } from './engine/client.ts';
import { Learner } from './learner.ts';
import { Local } from './local/database.ts';
import { askMe, before, learnerOf, me, reconcileMe, setMe, watchMe } from './me.ts';
import { openLanguages } from './parts/written.tsx';
import type { Supply } from './supply.ts';
import { loadTheme } from './theme.ts';

/** Everything the screens stand on. */
export interface Ground {
  /** What belongs to whoever uses the page now. */
  readonly local: Local;
  /** What belongs to the device, whoever uses it: the bank, light or dark. */
  readonly device: Local;
  readonly learner: Learner;
  readonly engine: Engine;
  readonly bank: Bank;
  /** What was issued to whoever uses the page; undefined where nobody signs in. */
  readonly supply: Supply | undefined;
  /** Until this resolves no question is chosen: what was practised on other devices is on its way. */
  readonly history: Promise<unknown> | undefined;
  /** Called once the first question stands there: from then on the page is in step with the server. */
  settle(): void;
}

/** Milliseconds for which somebody who is new on a device waits for what was practised on others. */
const HISTORY = 4000;

/** The page is open: for somebody, or for whoever comes to sign in. */
export type Opened =
  | { readonly kind: 'ready'; readonly ground: Ground }
  | { readonly kind: 'nobody'; readonly device: Local };

/**
 * Whether there is somebody to open the page for. Whoever was there last goes on at once, and it is seen to afterwards
 * that the server still says so; else the server says who.
 */
async function somebody(asked: ReturnType<typeof askMe>): Promise<boolean> {
  if (!before || (before.mode === 'class' && before.person === null)) {
    const told = await asked;
    if (told) setMe(told);
  } else {
    asked.then(
      (told) => told && reconcileMe(told),
      () => undefined,
    );
  }
  return me.value.mode === 'solo' || me.value.person !== null;
}

/** Opens the device's store, the learner's history, the bank and the engine. Rejects with words for a person. */
export async function start(): Promise<Opened> {
  const asked = askMe();
  const engine = startEngine((circuit) => {
    import('./for-classes.ts').then(({ triedOnPage }) => triedOnPage(circuit)).catch(() => undefined);
  });
  const opening = Local.open();
  // The engine takes the bank in while it is still being asked who is there.
  const banking = loadBank(opening).then(async (loaded) => {
    openLanguages(loaded.bank);
    await engine.call('open', { bank: loaded.bank });
    return loaded;
  });
  // Without anybody there is none to be had.
  banking.catch(() => undefined);
  const [device, ready] = await Promise.all([opening, somebody(asked)]);
  await loadTheme(device);
  if (!ready) return { kind: 'nobody', device };
  watchMe();
  const id = learnerOf(me.value);
  const local = me.value.mode === 'solo' ? device : await Local.open(`polewise-person-${id}`);
  const learner = new Learner(local, id, (fresh) => engine.call('remember', fresh));
  const [{ bank, keepNewer }, classes] = await Promise.all([
    banking,
    me.value.mode === 'class'
      ? import('./for-classes.ts').then(({ forClasses }) => forClasses(local, engine))
      : undefined,
    learner.load(),
  ]);
  const supply = classes?.supply;
  // A device on which nothing is yet waits for how its learner stands after what was practised elsewhere, and for questions.
  const first = supply && supply.there.length === 0 && navigator.onLine ? [supply.refill()] : [];
  const behind = learner.catchUp(HISTORY);
  const history =
    behind || first.length > 0
      ? Promise.race([
          Promise.allSettled([behind, ...first]),
          new Promise((resolve) => setTimeout(resolve, HISTORY)),
        ])
      : undefined;
  const settle = (): void => {
    learner.keepInStep();
    classes?.settle();
    // Installed, it is meant to work for weeks: the browser shouldn't throw its store away when space is short.
    if (matchMedia('(display-mode: standalone)').matches) navigator.storage.persist().catch(() => undefined);
    keepNewer().catch(() => undefined);
  };
  return { kind: 'ready', ground: { local, device, learner, engine, bank, supply, history, settle } };
}
