import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import type { Written } from '../parts/written.tsx';

/** The title block of the sheet on the desk. */
export function TitleBlock({
  title,
  cells,
  written,
  follows,
  children,
}: {
  title: string;
  cells: readonly string[];
  /** Of the first cell, where a bank has written it. */
  written?: Written;
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
        <p key={cell} class={at === 0 ? 'cell wide' : 'cell'} {...(at === 0 ? written : {})}>
          {cell}
        </p>
      ))}
      {children}
    </div>
  );
}
