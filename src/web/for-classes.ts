/** What there is only where people sign in: fetched there and nowhere else. */
import type { Engine } from './engine/client.ts';
import { Guard, guardWith } from './guard.ts';
import type { Local } from './local/database.ts';
import { learnerOf, me, roleOf } from './me.ts';
import { Supply } from './supply.ts';

export { triedOnPage } from './guard.ts';

export interface ForClasses {
  readonly supply: Supply;
  /** From then on it is in step with the server. */
  settle(): void;
}

/** As this device knows it. */
export async function forClasses(local: Local, engine: Engine): Promise<ForClasses> {
  const guard = new Guard(local, engine);
  const supply = new Supply(local);
  guardWith(guard);
  await Promise.all([guard.load(), supply.load()]);
  return {
    supply,
    settle() {
      guard.keepInStep();
      supply.keepFilled();
      // Homework answered on this device may still wait, though nobody opens the homework.
      if (roleOf(me.value) === 'learner')
        import('./tell-homework.ts').then(({ tellOpen }) => tellOpen()).catch(() => undefined);
      import('./local/homework/own-outbox.ts')
        .then(({ outboxOf }) => outboxOf(learnerOf(me.value)))
        .catch(() => undefined);
    },
  };
}
