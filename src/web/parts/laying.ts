import { signal } from '@preact/signals';
import { partMissing } from '../renewed.ts';
import type * as laid from './laid.tsx';

/** What lays meters and conductors over drawings, once its script is here: the first question has neither. */
export const laying = signal<typeof laid | undefined>(undefined);

/** Fetches it; tried again whenever it is wanted and not there yet. */
export function fetchLaying(): void {
  if (laying.value) return;
  import('./laid.tsx').then((there) => {
    laying.value = there;
  }, partMissing);
}
