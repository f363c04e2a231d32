/** Circuit -> scene on pages of one size, with frame and title block. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { DrawingWords, Lettering } from '../../words/index.ts';
import { plainLetters } from '../letters.ts';
import type { FrameLine, Scene, SceneSheet } from '../scene/types.ts';
import type { Collected } from './collected.ts';
import { Drawer } from './drawer.ts';
import { frameOf, pieceLetter, type SheetTitles } from './frame.ts';
import { type LayoutOptions, titleOf } from './layout.ts';
import { PIECE } from './places.ts';
import { type Page, type PagedProfile, roomOn } from './profile.ts';
import { stacked } from './sheets.ts';

export interface PageOptions extends LayoutOptions {
  readonly words: DrawingWords['frame'];
}

/** The rows of one sheet of the circuit by the pages that they take, and how these are held. */
interface Shared {
  readonly pages: readonly (readonly Collected[])[];
  readonly profile: PagedProfile;
}

function shared(rows: readonly Collected[], profile: PagedProfile): Shared {
  const room = roomOn(profile.page);
  const pages: Collected[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    if (used + profile.stack + row.height > room) {
      pages.push([]);
      used = -profile.stack;
    }
    pages[pages.length - 1]?.push(row);
    used += profile.stack + row.height;
  }
  return { pages, profile };
}

function lowered(line: FrameLine, page: Page, drop: number): FrameLine {
  const move = (y: number): number => (y > page.edge ? y + drop : y);
  return { ...line, y1: move(line.y1), y2: move(line.y2) };
}

function framed({ pages, profile }: Shared, titles: SheetTitles): SceneSheet[] {
  const { page } = profile;
  return pages.map((list, index) => {
    const content = stacked(list, profile.stack, page.left + page.inner, page.edge + page.inner);
    const { lines, texts } = frameOf(page, profile, titles, index + 1, pages.length);
    // A single row higher than the page makes its page higher: nothing is left off.
    const height = Math.max(page.height, content.bottom + page.inner + page.block + page.edge);
    const drop = height - page.height;
    return {
      sheet: titles.sheet,
      title: titles.sheetTitle,
      piece: index + 1,
      pieces: pages.length,
      ...content,
      texts: [...content.texts, ...texts.map((text) => ({ ...text, y: text.y + drop }))],
      width: page.width,
      height,
      frame: lines.map((line) => lowered(line, page, drop)),
    };
  });
}

/** References were written with room for the letter of a piece: now that every column has its page, they name it. */
function referred(sheets: readonly SceneSheet[], { measure }: PagedProfile): SceneSheet[] {
  const letters = new Map<string, string>();
  for (const { sheet, piece, texts } of sheets)
    for (const { role, text } of texts)
      if (role === 'path') letters.set(`${sheet}.${text}`, pieceLetter(piece));
  const named = (text: string): string =>
    text.replace(PIECE, (_, sheet, column) => `/${sheet}${letters.get(`${sheet}.${column}`)}.${column}`);
  return sheets.map((sheet) => ({
    ...sheet,
    symbols: sheet.symbols.map((symbol) => ({ ...symbol, place: named(symbol.place) })),
    texts: sheet.texts.map((each) => {
      const text = named(each.text);
      if (text === each.text) return each;
      const width = measure(text, each.role);
      return { ...each, text, width, x: each.anchor === 'end' ? each.x + each.width - width : each.x };
    }),
  }));
}

export function layOutPages(
  words: Lettering,
  circuit: Circuit,
  profile: PagedProfile,
  { rename = plainLetters, sheet: only, words: written, note }: PageOptions,
): Scene {
  const title = titleOf(words, circuit);
  const drawn = (pieces: boolean): Scene => {
    const drawer = new Drawer(words, circuit, profile, rename, pieces);
    let turned: Drawer | undefined;
    const sheets = drawer.sheets().flatMap((columns) => {
      const { sheet, title: sheetTitle } = columns;
      const titles = { title, sheet, sheetTitle, words: written, note };
      const rows = drawer.rows(columns);
      const other = profile.turned;
      // Where a row is too high for the page, the paper is turned.
      if (!other || rows.every(({ height }) => height <= roomOn(profile.page)))
        return framed(shared(rows, profile), titles);
      turned ??= new Drawer(words, circuit, other, rename, pieces);
      return framed(shared(turned.rows(columns), other), titles);
    });
    return { profile: profile.name, title, sheets, conductors: drawer.conductors() };
  };
  const whole = drawn(false);
  const scene = whole.sheets.every(({ pieces }) => pieces === 1) ? whole : drawn(true);
  const sheets = scene === whole ? whole.sheets : referred(scene.sheets, profile);
  return { ...scene, sheets: sheets.filter(({ sheet }) => only === undefined || sheet === only) };
}
