/** Rows stacked on a sheet that is as high as it needs to be. */
import type { SceneSheet } from '../scene/types.ts';
import type { Collected } from './collected.ts';
import type { SheetColumns } from './places.ts';
import type { Profile } from './profile.ts';

export function openSheet(
  rows: readonly Collected[],
  { margin, stack, sheetWidth }: Profile,
  { sheet, title }: SheetColumns,
): SceneSheet {
  const content = stacked(rows, stack, margin, margin);
  const width = Math.max(sheetWidth, ...rows.map((row) => row.width + 2 * margin));
  return { sheet, title, piece: 1, pieces: 1, ...content, width, height: content.bottom + margin, frame: [] };
}

type Content = Pick<SceneSheet, 'symbols' | 'wires' | 'dots' | 'marks' | 'links' | 'texts'> & {
  readonly bottom: number;
};

export function stacked(rows: readonly Collected[], gap: number, dx: number, top: number): Content {
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
