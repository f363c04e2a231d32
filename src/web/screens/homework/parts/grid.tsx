import type { ComponentChildren } from 'preact';

/** What scrolls must be reachable by keyboard; not every browser sees to that by itself. */
const REACHABLE = { tabIndex: 0 } as const;

/** Room for a schedule that is wider than the page: it scrolls by itself. */
export const Grid = ({ label, children }: { label: string; children: ComponentChildren }) => (
  <section class="grid-scroll" aria-label={label} {...REACHABLE}>
    {children}
  </section>
);
