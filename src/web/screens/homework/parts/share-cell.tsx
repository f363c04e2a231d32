/** Where a share stands: the hatch under its number grows denser as it falls, as on a drawing what is to be looked at is hatched. */
function levelOf(share: number): 'firm' | 'fair' | 'weak' | 'low' {
  if (share >= 0.9) return 'firm';
  if (share >= 0.75) return 'fair';
  return share >= 0.5 ? 'weak' : 'low';
}

/** A share of marks as a cell of a schedule: the number, and how dense it is hatched. Null: there is none. */
export function ShareCell({ share, none = 'nothing handed in' }: { share: number | null; none?: string }) {
  if (share === null)
    return (
      <td class="share">
        <span aria-hidden="true">–</span>
        <span class="away">{none}</span>
      </td>
    );
  return <td class={`share ${levelOf(share)}`}>{Math.round(100 * share)}</td>;
}

/** What the hatching says. */
export function ShareLegend() {
  return (
    <p class="share-legend">
      Numbers are per cent of the marks.{' '}
      <span>
        <span class="sample firm" aria-hidden="true" /> from 90,
      </span>{' '}
      <span>
        <span class="sample fair" aria-hidden="true" /> from 75,
      </span>{' '}
      <span>
        <span class="sample weak" aria-hidden="true" /> from 50,
      </span>{' '}
      <span>
        <span class="sample low" aria-hidden="true" /> below 50; – nothing.
      </span>
    </p>
  );
}
