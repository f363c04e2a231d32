import { useEffect, useState } from 'preact/hooks';
import type { Outbox } from '../kept/outbox.ts';
import { leftText, whenText } from '../moments.ts';

const countText = (count: number): string => (count === 1 ? '1 answer' : `${count} answers`);

function standingText(outbox: Outbox, paper: string | undefined): string {
  const refused = paper === undefined ? 0 : (outbox.refused.value.get(paper) ?? 0);
  const count = outbox.waiting.value;
  const standing = outbox.standing.value;
  const unkept = outbox.unkept.value;
  if (unkept !== undefined)
    return `Not kept yet. ${unkept} It is tried again by itself: leave the page open until it says Saved.`;
  if (count === 0 && refused > 0)
    return `${countText(refused)} ${refused === 1 ? 'was' : 'were'} not saved: the overview says why.`;
  if (count === 0) return standing === 'unknown' ? '' : 'Saved.';
  const answers = countText(count);
  if (standing === 'later') return `${answers} kept on this device, waiting for the network.`;
  if (standing === 'signed-out') return `${answers} kept on this device. Sign in again to send them.`;
  return 'Saving…';
}

/** How it stands with saving, in words; of one paper also what came too late for it. */
export function savingText(outbox: Outbox, paper?: string): string {
  const gone = outbox.gone.value;
  const text = standingText(outbox, paper);
  if (gone === 0) return text;
  return `This browser has thrown away ${countText(gone)} kept here and not yet sent: look the paper over. ${text}`;
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
  const now = useNow(outbox);
  const left = closesAt - now;
  return (
    <div class="keeping">
      <p role="status" class={outbox.unkept.value === undefined ? '' : 'caution'}>
        {savingText(outbox, paper)}
      </p>
      <p>
        {left <= 0 ? 'Closed' : `${leftText(left)} left`}
        <span class="until"> · closes {whenText(closesAt)}</span>
      </p>
    </div>
  );
}
