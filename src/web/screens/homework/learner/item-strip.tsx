import { addressOf } from '../where.ts';
import type { PaperSession } from './paper-session.ts';

const WORDS = { all: 'answered', part: 'answered in part', none: 'not answered' } as const;

/** The items as cells side by side: a full line under what is answered, a broken one under what is answered in part. */
export function ItemStrip({ session, at }: { session: PaperSession; at: number }) {
  const answered = session.answered.value;
  return (
    <nav class="item-strip" aria-label="Items">
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
