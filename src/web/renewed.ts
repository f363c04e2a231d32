/** Whether the server has another build of the page than the one that is open, and the way to that one. */
import { signal } from '@preact/signals';

/** newer: there is another one. too-old: this one can't go on with its server. part: what it wanted to fetch is gone. */
export const renewed = signal<'newer' | 'too-old' | 'part' | undefined>(undefined);

/** Milliseconds for which the new page's files are waited for. */
const FETCHING = 10_000;

let newer = false;

/** Notes which page the server of this reply has. Whether it is another one. */
export function isFromNewer({ headers }: Response): boolean {
  const there = headers.get('polewise-page');
  if (there === null) return false;
  const script = document.querySelector('script[type=module][src]');
  newer = script !== null && script.getAttribute('src') !== there;
  return newer;
}

/** Says that there is a newer page, where there is: between two questions, and not in the middle of one. */
export function tellNewer(): void {
  if (newer) renewed.value ??= 'newer';
}

/** A part of the page was not to be had: without network that is nothing new. */
export async function partMissing(): Promise<void> {
  const response = await fetch('/api/health').catch(() => undefined);
  if (response && isFromNewer(response)) renewed.value ??= 'part';
}

/** Loads the page as the server has it now. What stands on the device comes back. */
export async function loadAnew(): Promise<void> {
  const kept = await navigator.serviceWorker?.getRegistration().catch(() => undefined);
  const fresh = await kept?.update().then(
    () => kept.installing ?? kept.waiting,
    () => undefined,
  );
  if (fresh && fresh.state !== 'activated')
    await new Promise<void>((resolve) => {
      setTimeout(resolve, FETCHING);
      fresh.addEventListener('statechange', () => {
        if (fresh.state === 'activated' || fresh.state === 'redundant') resolve();
      });
    });
  location.reload();
}
