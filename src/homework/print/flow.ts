/** Pieces of a print one under the other, and their way onto pages. */
import type { Lettered, Pen } from './pen.ts';

/** What a reader that can't see the page is told a piece is. */
export type Tag = 'H1' | 'H2' | 'P' | 'Figure';

export interface Piece {
  readonly height: number;
  readonly tag: Tag;
  readonly alt?: string;
  /** Absent: a gap, which is left out at the top of a page. */
  readonly draw?: (pen: Pen, x: number, y: number) => void;
}

/** Pieces that stay on one page where they fit one. */
export type Block = readonly Piece[];

export interface Placed {
  readonly piece: Piece;
  /** From the top of the room for pieces. */
  readonly y: number;
}

export const gap = (height: number): Piece => ({ height, tag: 'P' });

/** Lines of text; a line is 1.25 times as high as its letters. */
export function textPiece(
  pen: Pen,
  text: string,
  {
    width,
    indent = 0,
    tag = 'P',
    most,
    ...lettered
  }: Lettered & {
    readonly width: number;
    readonly indent?: number;
    readonly tag?: Tag;
    /** Lines at most; the last one then ends in an ellipsis. */
    readonly most?: number;
  },
): Piece {
  const room = width - indent;
  const all = pen.wrap(text, room, lettered);
  const lines =
    most !== undefined && all.length > most
      ? [...all.slice(0, most - 1), pen.cut(`${all[most - 1]} ${all[most]}`, room, lettered)]
      : all;
  const step = lettered.size * 1.25;
  return {
    height: lines.length * step,
    tag,
    draw: (on, x, y) => {
      lines.forEach((line, index) => {
        on.write(line, x + indent, y + index * step + lettered.size * 0.95, lettered);
      });
    },
  };
}

/** Pieces beside one another, each at its own distance from the left edge. */
export const besides = (parts: readonly { readonly at: number; readonly piece: Piece }[]): Piece => ({
  height: Math.max(0, ...parts.map(({ piece }) => piece.height)),
  tag: 'P',
  draw: (pen, x, y) => {
    for (const { at, piece } of parts) piece.draw?.(pen, x + at, y);
  },
});

export const heightOf = (block: Block): number => block.reduce((sum, { height }) => sum + height, 0);

/** What a block needs of a page: a gap at its end needs nothing. */
const neededBy = (block: Block): number =>
  heightOf(block.slice(0, 1 + block.findLastIndex(({ draw }) => draw !== undefined)));

/** Points that rounding may take. */
const ROUNDING = 0.01;

/**
 * Blocks on pages, in their order. A block that doesn't fit what is left of a page begins the next; one higher than a page
 * begins a page and goes on over as many as it takes.
 *
 * @param room - height for pieces on a page, counted from 0
 */
export function paginate(blocks: readonly Block[], room: (page: number) => number): Placed[][] {
  const pages: Placed[][] = [[]];
  let used = 0;
  const turn = (): void => {
    pages.push([]);
    used = 0;
  };
  const left = (): number => room(pages.length - 1) - used + ROUNDING;
  for (const block of blocks) {
    if (used > 0 && neededBy(block) > left()) turn();
    for (const piece of block) {
      if (!piece.draw && used === 0) continue;
      // A gap for which there is no room needs no page: the next piece has one.
      if (piece.draw && used > 0 && piece.height > left()) turn();
      pages.at(-1)!.push({ piece, y: used });
      used += piece.height;
    }
  }
  return pages;
}
