import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';

/** The title block of the sheet on the desk. */
export function TitleBlock({
  title,
  cells,
  follows,
  children,
}: {
  title: string;
  cells: readonly string[];
  /** The focus follows it, so that a keyboard and a screen reader begin where reading does. */
  follows?: number | undefined;
  children?: ComponentChildren;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (follows === undefined) return;
    heading.current?.focus({ preventScroll: true });
    scrollTo({ top: 0 });
  }, [follows]);
  return (
    <div class="title-block">
      <h1 ref={heading} tabIndex={-1}>
        {title}
      </h1>
      {cells.map((cell, at) => (
        <p key={cell} class={at === 0 ? 'cell wide' : 'cell'}>
          {cell}
        </p>
      ))}
      {children}
    </div>
  );
}
