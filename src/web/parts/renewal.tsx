import { useState } from 'preact/hooks';
import { loadAnew, renewed } from '../renewed.ts';
import { route } from '../route.ts';
import { words } from '../words.ts';

/** What of a screen is kept on the device: the rest is told to go. */
const KEPT: ReadonlySet<string> = new Set(['practise', 'homework', 'lessons', 'progress']);

/** That the server has another page than this one, and the way to it. */
export function Renewal() {
  const [busy, setBusy] = useState(false);
  const { value: why } = renewed;
  if (!why) return null;
  const { renewal, loading } = words('first').frame;
  return (
    <div class="renewal" role="status">
      <p>
        {renewal[why]} {KEPT.has(route.value.screen) ? renewal.comesBack : renewal.writtenGoes}
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
        {busy ? loading : renewal.loadAnew}
      </button>
    </div>
  );
}
