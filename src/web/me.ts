/** Who uses the page: as the server last said, remembered on this device so that practice goes on without network. */
import { signal } from '@preact/signals';
import type { Me } from '../../shared/api-people.ts';
import type { PersonRole } from '../../shared/people.ts';

const NAME = 'polewise-me';
/** The page on a machine of one's own, and before anything is known. */
const ALONE: Me = { mode: 'solo', person: null, firstRun: false };

/** Whether it looks like what the server says; it comes from this page's own server, or from this page. */
const looksRight = (value: unknown): value is Me =>
  typeof value === 'object' && value !== null && 'mode' in value && 'person' in value;

function remembered(): Me | undefined {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(NAME) ?? 'null');
    return looksRight(value) ? value : undefined;
  } catch {
    // Kept nothing, or not by this page: the server knows.
    return undefined;
  }
}

/** What this device remembers; undefined on a first visit. */
export const before: Me | undefined = remembered();
export const me = signal<Me>(before ?? ALONE);

/** What the person may do; on a machine of one's own there is only a learner. */
export const roleOf = ({ person }: Me): PersonRole => person?.role ?? 'learner';
/** In whose name answers are kept. */
export const learnerOf = ({ person }: Me): string => person?.id ?? 'me';

/** Takes over what the server says, and remembers it. */
export function become(now: Me): void {
  me.value = now;
  try {
    localStorage.setItem(NAME, JSON.stringify(now));
  } catch {
    // It is asked again at the next visit.
  }
}

/** Asks the server; undefined where it can't be reached or doesn't know just now. */
export async function askMe(): Promise<Me | undefined> {
  const response = await fetch('/api/me').catch(() => undefined);
  const told: unknown = response?.ok ? await response.json().catch(() => undefined) : undefined;
  return looksRight(told) ? told : undefined;
}
