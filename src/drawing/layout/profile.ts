/** Everything about a medium that the layout has to know: sizes of symbols and letters, pitches, the width there is. */

import type { Part } from '../parts/index.ts';
import type { TextRole } from '../scene/types.ts';
import type { Body } from '../symbols/symbol.ts';

export type { Body };

export interface Profile {
  readonly name: string;
  /** What the columns of one row may take. */
  readonly width: number;
  readonly body: (part: Part) => Body;
  /** From the line of a changeover to either leg. */
  readonly leg: number;
  /** Between the conductors of a three-phase group. */
  readonly phase: number;
  /** Free space between what belongs to one column and what belongs to the next. */
  readonly gap: number;
  /** Between the lines that lead a conductor round a column. */
  readonly riser: number;
  readonly channel: {
    /** Above the first and below the last conductor. */
    readonly margin: number;
    readonly pitch: number;
    /** Height of a channel in which nothing runs. */
    readonly empty: number;
  };
  /** From the top of a contact to the dashed line that joins it to others. */
  readonly join: number;
  /** From a line to the terminal number beside it; from a symbol to its name. */
  readonly numberGap: number;
  readonly labelGap: number;
  /** Length of conductor before a mark's text. */
  readonly stub: number;
  /** Between its end and the mark's text. */
  readonly markGap: number;
  /** 1 where positions count cells (the last cell of a box is part of it), 0 where they measure. */
  readonly cell: 0 | 1;
  readonly lineHeight: (role: TextRole) => number;
  readonly measure: (text: string, role: TextRole) => number;
  /** Widths to wrap a device's text to, narrowest first, and the most lines to accept before the next is tried. */
  readonly wraps: readonly number[];
  readonly wrapLines: number;
  /** Between rows of columns that are stacked, and above the first. */
  readonly stack: number;
  /** Free space round the drawing, where it has no frame. */
  readonly margin: number;
  /** The least width of a sheet. */
  readonly sheetWidth: number;
}

/** Sheets of one size with a frame and a title block; else as high as the drawing. */
export interface PagedProfile extends Profile {
  readonly page: Page;
  /** The same with the paper turned, for a sheet on which a path is too long for this way. */
  readonly turned?: PagedProfile;
}

/** A framed sheet: its size, the frame, the height of the title block and the space kept inside the frame. */
export interface Page {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly edge: number;
  readonly block: number;
  readonly inner: number;
  /** Widths of the title block's two cells on the right: for the state shown, and for the sheet's number and title. */
  readonly cells: readonly [note: number, sheet: number];
}

/** Height of a page between its frame and its title block. */
export const roomOn = (page: Page): number => page.height - 2 * page.edge - page.block - 2 * page.inner;
