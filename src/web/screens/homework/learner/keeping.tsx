import { useEffect, useState } from 'preact/hooks';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { set, words } from '../../../words.ts';
import { leftOf } from '../moments.ts';

function standingText(outbox: Outbox, paper: string | undefined): string {
  const w = words('homework').paper.keeping;
  const refused = paper === undefined ? 0 : (outbox.refused.value.get(paper) ?? 0);
  const count = outbox.waiting.value;
  const standing = outbox.standing.value;
  const unkept = outbox.unkept.value;
  if (unkept !== undefined) return w.notKept(unkept);
  if (count === 0 && refused > 0) return w.refused(refused);
  if (count === 0) return standing === 'unknown' ? '' : w.saved;
  if (standing === 'later') return w.waits(count);
  if (standing === 'signed-out') return w.signedOut(count);
  return w.saving;
}

/** How it stands with saving, in words; of one paper also what came too late for it. */
export function savingText(outbox: Outbox, paper?: string): string {
  const gone = outbox.gone.value;
  const text = standingText(outbox, paper);
  if (gone === 0) return text;
  return words('homework').paper.keeping.thrownAway({ answers: gone, others: text });
}

/** How often the time left is looked at. */
const EVERY = 5_000;

/** Now, looked at again and again, by the server's clock. */
export function useNow(outbox: Outbox): number {
  const [now, setNow] = useState(() => outbox.now());
  const ahead = outbox.ahead.value;
  useEffect(() => {
    setNow(outbox.now());
    const timer = setInterval(() => setNow(outbox.now()), EVERY);
    return () => clearInterval(timer);
  }, [outbox, ahead]);
  return now;
}

/** Whether it is saved, and what time is left. */
export function Keeping({ outbox, paper, closesAt }: { outbox: Outbox; paper: string; closesAt: number }) {
  const w = words('homework').paper.keeping;
  const now = useNow(outbox);
  const left = closesAt - now;
  return (
    <div class="keeping">
      <p role="status" class={outbox.unkept.value === undefined ? '' : 'caution'}>
        {savingText(outbox, paper)}
      </p>
      <p>
        {set(left <= 0 ? w.closed(closesAt) : w.left({ time: leftOf(left), closesAt }), {
          until: (text) => <span class="until">{text}</span>,
        })}
      </p>
    </div>
  );
}
