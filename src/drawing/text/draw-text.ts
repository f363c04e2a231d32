/** The drawing of a circuit for a terminal, from the same layout as every other. */
import type { Circuit } from '../../../shared/circuit.ts';
import { layOut } from '../layout/layout.ts';
import type { SceneSheet } from '../scene/types.ts';
import { Canvas } from './canvas.ts';
import { drawGlyph } from './glyphs.ts';
import { textProfile } from './profile.ts';

export interface TextOptions {
  /** Width of the terminal in characters; at least 40 are used. */
  readonly columns: number;
  /** Only this sheet. */
  readonly sheet?: number;
  /** Nothing but ASCII characters. */
  readonly ascii?: boolean;
}

function sheetText(sheet: SceneSheet, ascii: boolean): string {
  const canvas = new Canvas(sheet.width, sheet.height);
  for (const { net, x1, y1, x2, y2 } of sheet.wires) canvas.line(net, x1, y1, x2, y2);
  for (const symbol of sheet.symbols) drawGlyph(canvas, symbol, undefined);
  for (const link of sheet.links)
    for (let x = link.x1 + 2; x < link.x2 - 1; x++) canvas.put(x, Math.floor(link.y), '╌');
  for (const { x, y, text } of sheet.texts) canvas.put(x, Math.floor(y), text);
  return canvas.toText(ascii);
}

/** Draws all sheets, or one, one under another. Every contact is shown at rest. */
export function drawText(circuit: Circuit, { columns, sheet, ascii = false }: TextOptions): string {
  const scene = layOut(circuit, textProfile(Math.max(40, columns)), sheet === undefined ? {} : { sheet });
  const several = circuit.sheets.length > 1 || scene.sheets.length > 1;
  return scene.sheets
    .map((drawn) => {
      const heading =
        several || drawn.title ? `Sheet ${drawn.sheet}${drawn.title ? `: ${drawn.title}` : ''}\n\n` : '';
      return `${heading}${sheetText(drawn, ascii)}`;
    })
    .join('\n\n');
}
