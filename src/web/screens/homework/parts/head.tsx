import type { ComponentChildren } from 'preact';

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
      <h1>{title}</h1>
      {shown.map((cell, at) => (
        <p key={cell} class={at === 0 ? 'cell wide' : 'cell'}>
          {cell}
        </p>
      ))}
      {children}
    </header>
  );
}
