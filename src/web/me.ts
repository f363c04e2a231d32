/** Who uses the page: as the server last said, remembered on this device so that practice goes on without network. */
import { signal } from '@preact/signals';
import type { Me } from '../../shared/api-people.ts';
import type { ApiProblem } from '../../shared/api-problem.ts';
import type { PersonRole } from '../../shared/people.ts';
import { askAs, whenSignedOut } from './api.ts';

const NAME = 'polewise-me';
/** Kept while somebody has signed out here and the server has not been told. */
const LEAVING = 'polewise-leaving';
/** The page on a machine of one's own, and before anything is known. */
const ALONE: Me = { mode: 'solo', person: null, firstRun: false };

/** Whether it looks like what the server says; it comes from this page's own server, or from this page. */
const looksRight = (value: unknown): value is Me =>
  typeof value === 'object' && value !== null && 'mode' in value && 'person' in value;

/** The browser's small store; where it keeps nothing, the server is asked at each visit. */
const small = {
  read(name: string): string | null {
    try {
      return localStorage.getItem(name);
    } catch {
      return null;
    }
  },
  write(name: string, value: string | null): void {
    try {
      if (value === null) localStorage.removeItem(name);
      else localStorage.setItem(name, value);
    } catch {
      // Then it isn't remembered.
    }
  },
};

function readMe(text: string | null): Me | undefined {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    return looksRight(value) ? value : undefined;
  } catch {
    return undefined;
  }
}

/** What this device remembers; undefined on a first visit. */
export const before: Me | undefined = readMe(small.read(NAME));
export const me = signal<Me>(before ?? ALONE);
me.subscribe(({ person }) => askAs(person?.id ?? null));
/** The server no longer knows the one who uses the page: what was practised waits until there is a new sign-in. */
export const signedOut = signal(false);
/** Whether the page asks for signing in again, over whatever stands there. */
export const askingAgain = signal(false);

/** What the person may do; on a machine of one's own there is only a learner. */
export const roleOf = ({ person }: Me): PersonRole => person?.role ?? 'learner';
/** In whose name answers are kept. */
export const learnerOf = ({ person }: Me): string => person?.id ?? 'me';

/** Takes over what the server says, and remembers it. */
export function setMe(now: Me): void {
  me.value = now;
  small.write(NAME, JSON.stringify(now));
  if (now.person) small.write(LEAVING, null);
}

/** Milliseconds after which a network that says nothing is as good as none. */
const PATIENCE = 60_000;
const inTime = (path: string, init: RequestInit = {}): Promise<Response | undefined> =>
  fetch(path, { ...init, signal: AbortSignal.timeout(PATIENCE) }).catch(() => undefined);

const signOut = async (): Promise<boolean> =>
  (await inTime('/api/sign-out', { method: 'POST' }))?.ok === true;

/**
 * Asks the server; undefined where it can't be reached or doesn't know just now.
 *
 * @throws Error with words for a person where it says that nobody may sign in on this way: passwords would be heard
 */
export async function askMe(): Promise<Me | undefined> {
  if (small.read(LEAVING) !== null) {
    if (!(await signOut())) return undefined;
    small.write(LEAVING, null);
  }
  const response = await inTime('/api/me');
  const told: unknown = await response?.json().catch(() => undefined);
  if (response?.ok) return looksRight(told) ? told : undefined;
  const { code, message, hint } = (told ?? {}) as Partial<ApiProblem>;
  if (code === 'not-secure') throw new Error(`${message} ${hint}`);
  return undefined;
}

/** Signs out here. Where the server can't be told, it is before anything else is asked of it. */
export async function leave(): Promise<void> {
  if (!(await signOut())) small.write(LEAVING, 'yes');
  setMe({ mode: 'class', person: null, firstRun: false });
  location.hash = '';
  location.reload();
}

const same = (one: Me, other: Me): boolean => one.mode === other.mode && one.person?.id === other.person?.id;

/**
 * Takes in what the server says while somebody uses the page. Somebody else now, or another way of running: the page
 * begins anew, for nothing of one person may be seen by another. Nobody: the one who was there goes on without sending.
 */
export function reconcileMe(told: Me): void {
  if (same(told, me.value)) {
    signedOut.value = false;
    askingAgain.value = false;
    setMe(told);
  } else if (told.mode === 'class' && told.person === null && me.value.person) {
    signedOut.value = true;
  } else {
    setMe(told);
    location.reload();
  }
}

/** Asks the server who is there, where it may be somebody else by now, or not the same of the one who is. */
export async function refreshMe(): Promise<void> {
  const told = await askMe();
  if (told) reconcileMe(told);
}

/** From now on the page notices when somebody signs in or out, here or in another tab. */
export function watchMe(): void {
  whenSignedOut(() => {
    const ask = (): void => {
      askingAgain.value = signedOut.value;
    };
    refreshMe().then(ask, ask);
  });
  const look = (): void => {
    const now = readMe(small.read(NAME));
    if (!now) return;
    if (!same(now, me.value)) location.reload();
    // The same one has signed in again there.
    else if (signedOut.value) refreshMe().catch(() => undefined);
  };
  window.addEventListener('storage', ({ key }) => {
    if (key === NAME) look();
  });
  // Brought back by the browser as it stood, it has heard of nothing meanwhile.
  window.addEventListener('pageshow', ({ persisted }) => {
    if (persisted) look();
  });
}
