/** Rows stacked on a sheet that is as high as it needs to be. */
import type { SceneSheet, SceneText } from '../scene/types.ts';
import type { Collected } from './collected.ts';
import type { SheetColumns } from './places.ts';
import type { Profile } from './profile.ts';
import { wrapText } from './wrap.ts';

/** `note`: what stands below the drawing, of the state it is shown in. */
export function openSheet(
  rows: readonly Collected[],
  { margin, stack, sheetWidth, measure, lineHeight }: Profile,
  { sheet, title }: SheetColumns,
  note: string,
): SceneSheet {
  const content = stacked(rows, stack, margin, margin);
  const width = Math.max(sheetWidth, ...rows.map((row) => row.width + 2 * margin));
  const height = lineHeight('text');
  const lines = wrapText(note, width - 2 * margin, (line) => measure(line, 'text')).map(
    (text, line): SceneText => ({
      role: 'text',
      text,
      x: margin,
      y: content.bottom + (line + 1) * height,
      width: measure(text, 'text'),
      height,
      anchor: 'start',
      of: 'note',
    }),
  );
  return {
    sheet,
    title,
    piece: 1,
    pieces: 1,
    ...content,
    texts: [...content.texts, ...lines],
    width,
    height: content.bottom + (lines.length > 0 ? (lines.length + 1) * height : 0) + margin,
    frame: [],
  };
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
