import { words } from '../../../words.ts';

/** From one item of a marked paper to the next, the one before, or all of them. Items count from 0, addresses from 1. */
export function ItemBar({ at, last, to }: { at: number; last: number; to: (item: number | null) => string }) {
  const w = words('homework').common.walk;
  return (
    <>
      {at > 0 && (
        <a class="button" href={to(at)}>
          {w.back}
        </a>
      )}
      <a class="button plain" href={to(null)}>
        {w.all}
      </a>
      {at < last && (
        <a class="button main" href={to(at + 2)}>
          {w.next}
        </a>
      )}
    </>
  );
}
