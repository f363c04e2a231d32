/** The frame of a page and its title block. */
import type { DrawingWords } from '../../words/index.ts';
import type { FrameLine, SceneText } from '../scene/types.ts';
import type { Page, Profile } from './profile.ts';
import { wrapText } from './wrap.ts';

export interface SheetTitles {
  readonly title: string;
  readonly sheet: number;
  readonly sheetTitle: string;
  readonly words: DrawingWords['frame'];
  /** What the title block says of the state shown; without, that it is drawn at rest. */
  readonly note?: string | undefined;
}

/** `1`; where a sheet of the circuit takes several of paper, `1a`, `1b` after it. */
export const sheetName = (sheet: number, piece: number): string => `${sheet}${pieceLetter(piece)}`;

/** Nothing on the first piece; a, b and so on after it. */
export const pieceLetter = (piece: number): string => (piece === 1 ? '' : String.fromCharCode(95 + piece));

/** The frame, and below the drawing the title block: what it is of, which sheet, and in which state it is drawn. */
export function frameOf(
  page: Page,
  profile: Profile,
  { title, sheet, sheetTitle, words, note = words.atRest }: SheetTitles,
  piece: number,
  pieces: number,
): { readonly lines: FrameLine[]; readonly texts: SceneText[] } {
  const [left, right] = [page.left, page.width - page.edge];
  const [top, bottom] = [page.edge, page.height - page.edge];
  const block = bottom - page.block;
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
