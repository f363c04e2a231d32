/** From one item of a marked paper to the next, the one before, or all of them. Items count from 0, addresses from 1. */
export function ItemBar({ at, last, to }: { at: number; last: number; to: (item: number | null) => string }) {
  return (
    <>
      {at > 0 && (
        <a class="button" href={to(at)}>
          Back
        </a>
      )}
      <a class="button plain" href={to(null)}>
        All items
      </a>
      {at < last && (
        <a class="button main" href={to(at + 2)}>
          Next
        </a>
      )}
    </>
  );
}
