import type { ComponentChildren } from 'preact';
import { words } from '../words.ts';

/** What scrolls must be reachable by keyboard; not every browser sees to that by itself. */
const REACHABLE = { tabIndex: 0 } as const;

/** The sheet that a drawing lies on; where it is larger than its place it scrolls by itself. */
export function Board({ children }: { children: ComponentChildren }) {
  return (
    <section class="board" aria-label={words('first').parts.drawing.board} {...REACHABLE}>
      {children}
    </section>
  );
}
