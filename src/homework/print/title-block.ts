/** The title block of a printed sheet: cells with a small heading each, as on a drawing. */
import { PAGE, WIDTH } from './document.ts';
import { type Face, mm, type Pen } from './pen.ts';

export interface Cell {
  readonly label: string;
  readonly text: string;
  /** Share of the row's width. */
  readonly share: number;
  readonly face?: Face;
  /** At the right, where the rest is for a pen. */
  readonly right?: boolean;
  /** Height of the letters; smaller where the text is too long for its cell, and cut where even that is too long. */
  readonly size?: number;
}

export interface Row {
  readonly height: number;
  readonly cells: readonly Cell[];
}

const PAD = mm(1.8);
const LEAST = 7;

function writeCell(
  pen: Pen,
  { label, text, face = 'plain', size = 11, right = false }: Cell,
  x: number,
  y: number,
  width: number,
  height: number,
): void {
  pen.write(label, x + PAD, y + mm(3), { size: 6, quiet: true });
  const room = width - 2 * PAD;
  let fitting = size;
  while (fitting > LEAST && pen.width(text, { size: fitting, face }) > room) fitting -= 0.5;
  const lettered = { size: fitting, face };
  const fitted = pen.cut(text, room, lettered);
  const from = right ? x + width - PAD - pen.width(fitted, lettered) : x + PAD;
  pen.write(fitted, from, y + height - mm(2.1), lettered);
}

export const heightOfRows = (rows: readonly Row[]): number =>
  rows.reduce((sum, { height }) => sum + height, 0);

/** Draws the block at the top of a page. */
export function titleBlock(pen: Pen, rows: readonly Row[]): void {
  let y = PAGE.top;
  for (const { height, cells } of rows) {
    let x = PAGE.left;
    const whole = cells.reduce((sum, { share }) => sum + share, 0);
    cells.forEach((cell, index) => {
      const width = (WIDTH * cell.share) / whole;
      if (index > 0) pen.line(x, y, x, y + height);
      writeCell(pen, cell, x, y, width, height);
      x += width;
    });
    y += height;
    if (y < PAGE.top + heightOfRows(rows) - 0.1) pen.line(PAGE.left, y, PAGE.left + WIDTH, y);
  }
  pen.box(PAGE.left, PAGE.top, WIDTH, heightOfRows(rows), 1.2);
}
