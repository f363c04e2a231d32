import type { Act } from '../../../shared/scenario.ts';
import { addOnDelay } from '../devices/index.ts';
import { long, short } from '../timing.ts';
import type { Family } from '../types.ts';
import { delayedDraft } from './delayed.ts';

/** Operates when its coil has been energised for the set time; an interruption starts the time afresh. */
export const onDelay: Family = {
  id: 'on-delay',
  size: { min: 1, max: 6 },
  draft: (random, { size }) =>
    delayedDraft(random, size, {
      family: onDelay.id,
      addTimer: addOnDelay,
      entries: ({ startsLate }) => startsLate,
      subject: 'on-delay',
      acts: (from, { seconds, toggle }, others) => {
        const { on, off } = toggle;
        const also = others.length > 0 && from.chance(0.5) ? [from.pick(others).toggle.on] : [];
        const shapes: readonly (() => Act[])[] = [
          () => [on, ...also, short(from, seconds)],
          () => [on, ...also, long(from, seconds)],
          () => [on, short(from, seconds), off, on, ...also, short(from, seconds)],
          () => [...also, on, long(from, seconds), off],
          () => [on, long(from, seconds), off, on, ...also],
          () => [on, short(from, seconds), ...also, short(from, seconds)],
        ];
        return from.pick(shapes)();
      },
    }),
};
