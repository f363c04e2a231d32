import { signal } from '@preact/signals';

/** The screens, as they stand in the address after the hash. */
export const SCREENS = ['practise', 'lessons', 'progress', 'try', 'bench'] as const;
export type Screen = (typeof SCREENS)[number];

export interface Place {
  readonly screen: Screen;
  /** What of it: a topic of the lessons. */
  readonly detail: string | undefined;
}

function read(): Place {
  const [screen, detail] = location.hash.replace(/^#\/?/, '').split('/');
  const known = SCREENS.find((name) => name === screen);
  return { screen: known ?? 'practise', detail: known && detail ? decodeURIComponent(detail) : undefined };
}

export const place = signal<Place>(read());
addEventListener('hashchange', () => {
  place.value = read();
});
