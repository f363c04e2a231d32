/** Long work in short turns, so that others who ask meanwhile don't wait for its end. */
import { others } from '../store/index.ts';

/** Milliseconds for which such work keeps the others waiting. */
export const LONGEST_TURN = 5;

export { others };

/** Does work that comes in steps, beginning at once. Others get their turn after every step that ends a long one. */
export async function inTurnsFromNow<T>(steps: Generator<undefined, T>): Promise<T> {
  let turn = performance.now();
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() - turn < LONGEST_TURN) continue;
    await others();
    turn = performance.now();
  }
}

/** The same, with a turn for others before it. */
export async function inTurns<T>(steps: Generator<undefined, T>): Promise<T> {
  await others();
  return inTurnsFromNow(steps);
}

/** Until when work that is asked for again and again goes on in one request. */
export const soon = (milliseconds: number): number => performance.now() + milliseconds;
export const isPast = (moment: number): boolean => performance.now() > moment;
