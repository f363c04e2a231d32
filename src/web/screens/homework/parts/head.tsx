import type { ComponentChildren } from 'preact';

/** A short last part stays with its word where a line ends: `seal-in`. */
const together = (title: string): string => title.replace(/-(?=\p{L}{1,3}(?!\p{L}))/gu, '-\u2060');

/** The title block over a schedule: its name, what it is of, and cells as in the corner of a drawing. */
export function Head({
  title,
  cells = [],
  children,
}: {
  title: string;
  cells?: readonly (string | null)[];
  children?: ComponentChildren;
}) {
  const shown = cells.filter((cell): cell is string => cell !== null && cell !== '');
  return (
    <header class="title-block sheet-head">
      <h1>{together(title)}</h1>
      {shown.map((cell, at) => (
        <p key={cell} class={at === 0 ? 'cell wide' : 'cell'}>
          {cell}
        </p>
      ))}
      {children}
    </header>
  );
}
