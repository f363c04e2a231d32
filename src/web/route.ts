import { signal } from '@preact/signals';
import type { PersonRole } from '../../shared/people.ts';
import { me, roleOf } from './me.ts';

/** The screens, as they stand in the address after the hash. */
const SCREENS = [
  'practise',
  'homework',
  'lessons',
  'progress',
  'try',
  'bench',
  'classes',
  'account',
  'enter',
  'join',
] as const;
export type Screen = (typeof SCREENS)[number];

/** The screens in the strip, in its order: what there is no room for is found on the account's page. */
const IN_STRIP: Readonly<Record<'solo' | PersonRole, readonly Screen[]>> = {
  solo: ['practise', 'lessons', 'progress', 'try', 'bench'],
  learner: ['practise', 'homework', 'lessons', 'progress', 'try'],
  tutor: ['classes', 'homework', 'practise', 'lessons', 'try', 'bench'],
  admin: ['classes', 'homework', 'practise', 'lessons', 'try', 'bench'],
};
export const inStrip = (): readonly Screen[] =>
  IN_STRIP[me.value.mode === 'solo' ? 'solo' : roleOf(me.value)];

/** Screens that only are there where people sign in. */
const OF_CLASSES: ReadonlySet<Screen> = new Set(['homework', 'classes', 'account', 'enter', 'join']);

export interface Route {
  readonly screen: Screen;
  /** What of it: a topic of the lessons. */
  readonly detail: string | undefined;
}

/** Addresses come from slips and are typed: what can't be read is nothing. */
function decoded(text: string | undefined): string | undefined {
  try {
    return text ? decodeURIComponent(text) : undefined;
  } catch {
    return undefined;
  }
}

function read(): Route {
  const [screen, detail] = location.hash.replace(/^#\/?/, '').split('/');
  const known = SCREENS.find((name) => name === screen);
  if (known && (me.value.mode === 'class' || !OF_CLASSES.has(known)))
    return { screen: known, detail: decoded(detail) };
  return { screen: inStrip()[0] ?? 'practise', detail: undefined };
}

export const route = signal<Route>(read());
const reread = (): void => {
  const { screen, detail } = read();
  if (screen !== route.peek().screen || detail !== route.peek().detail) route.value = { screen, detail };
};
addEventListener('hashchange', reread);
// What somebody may do decides where the page opens.
me.subscribe(reread);
