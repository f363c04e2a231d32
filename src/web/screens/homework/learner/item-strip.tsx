import { useEffect, useRef } from 'preact/hooks';
import { addressOf } from '../where.ts';
import type { PaperSession } from './paper-session.ts';

const WORDS = { all: 'answered', part: 'answered in part', none: 'not answered' } as const;

/** The items as cells side by side: a full line under what is answered, a broken one under what is answered in part. */
export function ItemStrip({ session, at }: { session: PaperSession; at: number }) {
  const answered = session.answered.value;
  const strip = useRef<HTMLElement>(null);
  useEffect(() => {
    // On a phone the strip is longer than the screen.
    const cell = strip.current?.children[at];
    if (strip.current && cell instanceof HTMLElement)
      strip.current.scrollLeft = cell.offsetLeft - (strip.current.clientWidth - cell.offsetWidth) / 2;
  }, [at]);
  return (
    <nav class="item-strip" aria-label="Items" ref={strip}>
      {answered.map((how, item) => (
        <a
          // The place on the paper is what an item is.
          key={session.items[item]?.asked.title + String(item)}
          href={addressOf({ at: 'paper', paper: session.id, item: item + 1 })}
          class={how}
          aria-current={item === at ? 'page' : undefined}
          aria-label={`Item ${item + 1}, ${WORDS[how]}`}
        >
          {item + 1}
        </a>
      ))}
    </nav>
  );
}
