import { useState } from 'preact/hooks';
import { place } from '../place.ts';
import { loadAnew, renewed } from '../renewed.ts';

const TEXTS = {
  newer: 'The page has been renewed.',
  'too-old': 'This page is older than its server: nothing can be sent or fetched until it is loaded anew.',
  part: 'The page has been renewed, and a part of this one is no longer to be had.',
} as const;

/** What of a screen is kept on the device: the rest is told to go. */
const KEPT: ReadonlySet<string> = new Set(['practise', 'homework', 'lessons', 'progress']);

/** That the server has another page than this one, and the way to it. */
export function Renewal() {
  const [busy, setBusy] = useState(false);
  const { value: why } = renewed;
  if (!why) return null;
  return (
    <div class="renewal" role="status">
      <p>
        {TEXTS[why]}{' '}
        {KEPT.has(place.value.screen)
          ? 'What stands here comes back, and no answer is lost.'
          : 'No answer is lost; what is being written on this screen goes.'}
      </p>
      <button
        type="button"
        class="button"
        disabled={busy}
        onClick={() => {
          setBusy(true);
          loadAnew().catch(() => location.reload());
        }}
      >
        {busy ? 'Loading…' : 'Load anew'}
      </button>
    </div>
  );
}
