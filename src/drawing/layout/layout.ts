/** Circuit -> scene: its rows of columns stacked on sheets as high as they need to be. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Lettering } from '../../words/index.ts';
import { plainLetters, type Rename } from '../letters.ts';
import type { Scene } from '../scene/types.ts';
import { Drawer } from './drawer.ts';
import type { Profile } from './profile.ts';
import { openSheet } from './sheets.ts';

export interface LayoutOptions {
  readonly rename?: Rename;
  /** Only this sheet of the circuit. Places on it still count every sheet. */
  readonly sheet?: number;
  /** The state that is shown, said below the drawing, or in the title block of a page; at rest nothing has to be said. */
  readonly note?: string | undefined;
}

export const titleOf = ({ lettering }: Lettering, { title = '', asFound }: Circuit): string =>
  asFound ? lettering.asFound(title) : title;

export function layOut(
  words: Lettering,
  circuit: Circuit,
  profile: Profile,
  { rename = plainLetters, sheet: only, note = '' }: LayoutOptions = {},
): Scene {
  const drawer = new Drawer(words, circuit, profile, rename);
  const sheets = drawer
    .sheets()
    .filter(({ sheet }) => only === undefined || sheet === only)
    .map((columns) => openSheet(drawer.rows(columns), profile, columns, note));
  return { profile: profile.name, title: titleOf(words, circuit), sheets, conductors: drawer.conductors() };
}
