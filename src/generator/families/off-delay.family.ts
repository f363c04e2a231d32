import type { Act } from '../../../shared/scenario.ts';
import { addOffDelay, addSuppliedOffDelay } from '../devices/index.ts';
import { long, short } from '../timing.ts';
import type { Family } from '../types.ts';
import { delayedDraft } from './delayed.ts';

/** Operates at once; its time runs from the end of the signal. */
export const offDelay: Family = {
  id: 'off-delay',
  size: { min: 1, max: 6 },
  draft: (random, { size }) =>
    delayedDraft(random, size, {
      family: offDelay.id,
      // Most electronic ones have a supply that stays on, and a control input.
      addTimer: random.chance(0.5) ? addSuppliedOffDelay : addOffDelay,
      entries: ({ runsOn }) => runsOn,
      subject: 'off-delay',
      acts: (from, { seconds, toggle, loss }, others) => {
        const { on, off } = toggle;
        const also = others.length > 0 && from.chance(0.5) ? [from.pick(others).toggle.on] : [];
        const shapes: readonly (() => Act[])[] = [
          () => [on, ...also],
          () => [on, ...also, long(from, seconds)],
          () => [on, off, ...also, short(from, seconds)],
          () => [on, long(from, seconds), off, short(from, seconds), ...also],
          () => [on, ...also, off, long(from, seconds)],
          () => [on, off, short(from, seconds), on, off, ...also, short(from, seconds)],
          // One that has nothing but its coil runs its time out all the same.
          () => [on, off, short(from, seconds), ...loss, ...also],
        ];
        return from.pick(shapes)();
      },
    }),
};
