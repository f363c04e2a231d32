/** The drawing of a circuit for a terminal, from the same layout as every other. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Lettering, Words } from '../../words/index.ts';
import { layOut } from '../layout/layout.ts';
import type { Rename } from '../letters.ts';
import type { SceneSheet } from '../scene/types.ts';
import type { ShownState } from '../states/shown-state.ts';
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
  /** How everything stands; at rest, as drawn, without it. */
  readonly state?: ShownState;
  readonly rename?: Rename;
}

function sheetText(
  sheet: SceneSheet,
  isLive: (net: number) => boolean,
  { state, ascii = false }: TextOptions,
): string {
  const canvas = new Canvas(sheet.width, sheet.height, isLive);
  for (const { net, x1, y1, x2, y2 } of sheet.wires) canvas.line(net, x1, y1, x2, y2);
  for (const symbol of sheet.symbols) drawGlyph(canvas, symbol, state);
  for (const link of sheet.links)
    for (let x = link.x1 + 2; x < link.x2 - 1; x++) canvas.put(x, Math.floor(link.y), '╌');
  for (const { x, y, text } of sheet.texts) canvas.put(x, Math.floor(y), text);
  return canvas.toText(ascii);
}

/** Draws all sheets, or one, one under another: at rest, or as everything stands in a state. */
export function drawText(
  words: Lettering & Pick<Words, 'drawing'>,
  circuit: Circuit,
  options: TextOptions,
): string {
  const { frame } = words.drawing;
  const { columns, sheet, rename, state } = options;
  const scene = layOut(words, circuit, textProfile(Math.max(40, columns)), {
    ...(sheet === undefined ? {} : { sheet }),
    ...(rename ? { rename } : {}),
  });
  const isLive = (net: number): boolean =>
    scene.conductors[net]?.some((terminal) => state?.energised.has(terminal)) ?? false;
  const several = circuit.sheets.length > 1 || scene.sheets.length > 1;
  return scene.sheets
    .map((drawn) => {
      const { sheet: number, title } = drawn;
      const name = String(number);
      const heading = title
        ? `${frame.sheetTitled({ sheet: name, title })}\n\n`
        : several
          ? `${frame.sheet(name)}\n\n`
          : '';
      return `${heading}${sheetText(drawn, isLive, options)}`;
    })
    .join('\n\n');
}
