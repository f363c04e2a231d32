import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

import { words } from '../words.ts';

interface Props {
  readonly title: string;
  /** Which sheet of how many, where there are several. */
  readonly sheet?: readonly [number, number];
  /** The heading takes the focus when there is no field to take it. */
  readonly focusTitle?: boolean;
  readonly children: ComponentChildren;
}

/** One sheet of paper with a title block: whoever comes in is asked one thing on each. */
export function EntrySheet({ title, sheet, focusTitle, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    document.title = words('first').frame.titleOf(title);
    if (focusTitle) heading.current?.focus();
  }, [title, focusTitle]);
  return (
    <section class="entry-sheet">
      <div class="entry-title">
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {sheet && <p>{words('enter').sheetOf({ sheet: sheet[0], of: sheet[1] })}</p>}
      </div>
      <div class="entry-body">{children}</div>
    </section>
  );
}
