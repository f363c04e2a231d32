import { set, words } from '../../../words.ts';

/** Where a share stands: the hatch under its number grows denser as it falls, as on a drawing what is to be looked at is hatched. */
function levelOf(share: number): 'firm' | 'fair' | 'weak' | 'low' {
  if (share >= 0.9) return 'firm';
  if (share >= 0.75) return 'fair';
  return share >= 0.5 ? 'weak' : 'low';
}

/** A share of marks as a cell of a schedule: the number, and how dense it is hatched. Null: there is none. */
export function ShareCell({ share, none }: { share: number | null; none?: string }) {
  const w = words('homework').marked.shares;
  if (share === null)
    return (
      <td class="share">
        <span aria-hidden="true">{w.none}</span>
        <span class="away">{none ?? w.nothingHandedIn}</span>
      </td>
    );
  return <td class={`share ${levelOf(share)}`}>{w.percent(share)}</td>;
}

/** What the hatching says. */
export function ShareLegend() {
  const sample = (level: string) => (text: string) => (
    <span>
      <span class={`sample ${level}`} aria-hidden="true" />
      {text}
    </span>
  );
  return (
    <p class="share-legend">
      {set(words('homework').marked.shares.legend, {
        firm: sample('firm'),
        fair: sample('fair'),
        weak: sample('weak'),
        low: sample('low'),
      })}
    </p>
  );
}
