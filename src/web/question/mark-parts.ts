import { signal } from '@preact/signals';
import type { Player } from '../parts/player.tsx';
import type { Explained } from './explained.tsx';

interface MarkParts {
  readonly Player: typeof Player;
  readonly Explained: typeof Explained;
}

/** The run and the explanation, once their script is here; until then a mark stands without them. */
export const markParts = signal<MarkParts | undefined>(undefined);

/** Fetches them; tried again whenever they are wanted and not there yet. */
export function fetchMarkParts(): void {
  if (markParts.value) return;
  import('./marked.ts').then(
    ({ Player, Explained }) => {
      markParts.value = { Player, Explained };
    },
    () => undefined,
  );
}
