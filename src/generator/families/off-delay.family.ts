import type { Act } from '../../../shared/scenario.ts';
import { addOffDelay } from '../devices/index.ts';
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
      addTimer: addOffDelay,
      entries: ({ runsOn }) => runsOn,
      subject: 'off-delay',
      acts: (from, { seconds, toggle }, others) => {
        const { on, off } = toggle;
        const also = others.length > 0 && from.chance(0.5) ? [from.pick(others).toggle.on] : [];
        const shapes: readonly (() => Act[])[] = [
          () => [on, ...also],
          () => [on, ...also, long(from, seconds)],
          () => [on, off, ...also, short(from, seconds)],
          () => [on, long(from, seconds), off, short(from, seconds), ...also],
          () => [on, ...also, off, long(from, seconds)],
          () => [on, off, short(from, seconds), on, off, ...also, short(from, seconds)],
        ];
        return from.pick(shapes)();
      },
    }),
};
