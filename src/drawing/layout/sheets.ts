/** Rows stacked on sheets: one as high as it needs to be, or pages of one size with frame and title block. */
import type { DrawingWords } from '../../words/index.ts';
import type { FrameLine, SceneSheet, SceneText } from '../scene/types.ts';
import type { Collected } from './collected.ts';
import { type Page, type Profile, roomOn } from './profile.ts';
import { wrapText } from './wrap.ts';

export interface SheetTitles {
  readonly title: string;
  readonly sheet: number;
  readonly sheetTitle: string;
  /** What the title block of a page is written with, and what it says of the state shown. */
  readonly block: { readonly words: DrawingWords['frame']; readonly note?: string | undefined } | undefined;
}

/** `1`; where a sheet of the circuit takes several of paper, `1a`, `1b` after it. */
export const sheetName = (sheet: number, piece: number): string =>
  piece === 1 ? String(sheet) : `${sheet}${String.fromCharCode(95 + piece)}`;

export function sheetsOf(rows: readonly Collected[], profile: Profile, titles: SheetTitles): SceneSheet[] {
  const { page } = profile;
  const common = { sheet: titles.sheet, title: titles.sheetTitle };
  if (!page) {
    const { margin } = profile;
    const content = stacked(rows, profile.stack, margin, margin);
    const width = Math.max(profile.sheetWidth, ...rows.map((row) => row.width + 2 * margin));
    return [
      { ...common, piece: 1, pieces: 1, ...content, width, height: content.bottom + margin, frame: [] },
    ];
  }
  const room = roomOn(page);
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
  return pages.map((list, index) => {
    const content = stacked(list, profile.stack, page.left + page.inner, page.edge + page.inner);
    const framed = frameOf(page, profile, titles, index + 1, pages.length);
    // A single row higher than the page makes its page higher: nothing is left off.
    const height = Math.max(page.height, content.bottom + page.inner + page.block + page.edge);
    const drop = height - page.height;
    return {
      ...common,
      piece: index + 1,
      pieces: pages.length,
      ...content,
      texts: [...content.texts, ...framed.texts.map((text) => ({ ...text, y: text.y + drop }))],
      width: page.width,
      height,
      frame: framed.lines.map((line) => lowered(line, page, drop)),
    };
  });
}

function lowered(line: FrameLine, page: Page, drop: number): FrameLine {
  const move = (y: number): number => (y > page.edge ? y + drop : y);
  return { ...line, y1: move(line.y1), y2: move(line.y2) };
}

type Content = Pick<SceneSheet, 'symbols' | 'wires' | 'dots' | 'marks' | 'links' | 'texts'> & {
  readonly bottom: number;
};

function stacked(rows: readonly Collected[], gap: number, dx: number, top: number): Content {
  let dy = top;
  for (const row of rows) {
    row.shift(dx, dy);
    dy += row.height + gap;
  }
  return {
    symbols: rows.flatMap((row) => row.symbols),
    wires: rows.flatMap((row) => row.wires),
    dots: rows.flatMap((row) => row.dots),
    marks: rows.flatMap((row) => row.marks),
    links: rows.flatMap((row) => row.links),
    texts: rows.flatMap((row) => row.texts),
    bottom: dy - gap,
  };
}

/** The frame, and below the drawing the title block: what it is of, which sheet, and in which state it is drawn. */
function frameOf(
  page: Page,
  profile: Profile,
  { title, sheet, sheetTitle, block: written }: SheetTitles,
  piece: number,
  pieces: number,
): { readonly lines: FrameLine[]; readonly texts: SceneText[] } {
  const [left, right] = [page.left, page.width - page.edge];
  const [top, bottom] = [page.edge, page.height - page.edge];
  const block = bottom - page.block;
  if (!written) throw new RangeError('a page needs the words of its title block');
  const { words, note = words.atRest } = written;
  const [noteWidth, sheetWidth] = page.cells;
  const corner = right - sheetWidth;
  const middle = corner - noteWidth;
  const heavy = (x1: number, y1: number, x2: number, y2: number): FrameLine => ({
    x1,
    y1,
    x2,
    y2,
    heavy: true,
  });
  const light = (x1: number, y1: number, x2: number, y2: number): FrameLine => ({
    x1,
    y1,
    x2,
    y2,
    heavy: false,
  });
  const pad = 8;
  const height = profile.lineHeight('title');
  /** In the middle of its cell, in as many lines as the block has room for. */
  const write = (text: string, x: number, width: number): SceneText[] => {
    const room = width - 2 * pad;
    const measure = (line: string): number => profile.measure(line, 'title');
    const lines = wrapText(text, room, measure);
    const most = Math.floor((page.block - 4) / height);
    const shown = lines.slice(0, most);
    if (lines.length > most) shown[most - 1] = cut(`${lines[most - 1]}…`, room, profile);
    const top = block + (page.block - shown.length * height) / 2;
    return shown.map((line, index) => ({
      role: 'title',
      text: line,
      x: x + pad,
      y: top + index * height,
      width: Math.min(room, measure(line)),
      height,
      anchor: 'start',
      of: 'block',
    }));
  };
  const name = sheetTitle
    ? words.sheetTitled({ sheet: sheetName(sheet, piece), title: sheetTitle })
    : words.sheet(sheetName(sheet, piece));
  return {
    lines: [
      heavy(left, top, right, top),
      heavy(left, bottom, right, bottom),
      heavy(left, top, left, bottom),
      heavy(right, top, right, bottom),
      heavy(left, block, right, block),
      light(middle, block, middle, bottom),
      light(corner, block, corner, bottom),
    ],
    texts: [
      ...write(title, left, middle - left),
      ...write(note, middle, corner - middle),
      ...write(pieces > 1 ? words.pieceOf({ sheet: name, piece, pieces }) : name, corner, right - corner),
    ],
  };
}

/** A text that ends in … as far as it fits. */
function cut(text: string, width: number, profile: Profile): string {
  let shown = text;
  while (shown.length > 1 && profile.measure(shown, 'title') > width) shown = `${shown.slice(0, -2)}…`;
  return shown;
}
