import { useEffect, useRef } from 'preact/hooks';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import type { PaperSession } from './paper-session.ts';

/** The items as cells side by side: a full line under what is answered, a broken one under what is answered in part. */
export function ItemStrip({ session, at }: { session: PaperSession; at: number }) {
  const w = words('homework').paper.strip;
  const answered = session.answered.value;
  const strip = useRef<HTMLElement>(null);
  useEffect(() => {
    // On a phone the strip is longer than the screen.
    const cell = strip.current?.children[at];
    if (strip.current && cell instanceof HTMLElement)
      strip.current.scrollLeft = cell.offsetLeft - (strip.current.clientWidth - cell.offsetWidth) / 2;
  }, [at]);
  return (
    <nav class="item-strip" aria-label={w.items} ref={strip}>
      {answered.map((how, item) => (
        <a
          // The place on the paper is what an item is.
          key={session.items[item]?.asked.title + String(item)}
          href={addressOf({ at: 'paper', paper: session.id, item: item + 1 })}
          class={how}
          aria-current={item === at ? 'page' : undefined}
          aria-label={w.item[how](item + 1)}
        >
          {item + 1}
        </a>
      ))}
    </nav>
  );
}
