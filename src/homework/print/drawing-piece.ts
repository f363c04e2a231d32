/** A circuit at rest as pieces of a page: its sheets under one another, narrow ones side by side. */
import type { Circuit } from '../../../shared/circuit.ts';
import { describe, layOut, PROFILES, picturesOf, type Scene, type SceneSheet } from '../../drawing/index.ts';
import { drawPicture, SCALE } from '../../drawing/pdf/draw-picture.ts';
import type { Words } from '../../words/index.ts';
import { gap, type Piece } from './flow.ts';
import { mm, PALETTE, type Pen } from './pen.ts';

const MARGIN = 6;
const BETWEEN = mm(1.5);
/** Room above a sheet for its name, where there are several. */
const HEAD = mm(4);
interface Laid {
  readonly scene: Scene;
  /** Sheets by their place in the scene: those of one row stand side by side. */
  readonly rows: readonly (readonly number[])[];
}

function laidOut(circuit: Circuit, width: number): Laid {
  // The paper layout without a page of its own: the item's page has frame and title block.
  const { page: _, ...paper } = PROFILES.a4;
  const scene = layOut(circuit, { ...paper, width: width / SCALE - 2 * MARGIN, margin: MARGIN });
  const rows: number[][] = [];
  let used = 0;
  scene.sheets.forEach((sheet, index) => {
    const row = rows.at(-1);
    const taken = sheet.width * SCALE + BETWEEN;
    if (row && used + taken - BETWEEN <= width) {
      row.push(index);
      used += taken;
    } else {
      rows.push([index]);
      used = taken;
    }
  });
  return { scene, rows };
}

const sheetAt = ({ sheets }: Scene, index: number): SceneSheet => sheets[index]!;
const highest = (scene: Scene, row: readonly number[]): number =>
  Math.max(...row.map((index) => sheetAt(scene, index).height));

const nameOf = ({ sheet, title }: SceneSheet, { paper }: Words): string =>
  title ? paper.sheetTitled({ sheet, title }) : paper.sheet(sheet);

/**
 * The drawing at rest in a width, as large as drawings on paper are (capitals of 2 mm), and smaller only where it would be
 * higher than `most`. Nothing of it depends on a scenario.
 */
export function drawingPieces(circuit: Circuit, words: Words, width: number, most: number): Piece[] {
  const { scene, rows } = laidOut(circuit, width);
  const { picture } = picturesOf(scene);
  const head = scene.sheets.length > 1 ? HEAD : 0;
  return rows.flatMap((row): Piece[] => {
    const [only] = row.length === 1 ? row : [];
    const scale = Math.min(
      SCALE,
      only === undefined ? SCALE : width / picture(only).width,
      (most - head) / highest(scene, row),
    );
    const height = highest(scene, row) * scale + head;
    const alt = row
      .map((index) => describe(words, circuit, { sheet: sheetAt(scene, index).sheet }))
      .join(' ');
    return [
      {
        height,
        tag: 'Figure',
        alt,
        draw: (pen: Pen, left: number, y: number) => {
          let x = left;
          row.forEach((index, place) => {
            const drawn = picture(index);
            if (place > 0) pen.line(x - BETWEEN / 2, y, x - BETWEEN / 2, y + height, 0.4);
            if (head > 0)
              pen.write(nameOf(sheetAt(scene, index), words), x + mm(1.5), y + mm(3.2), {
                size: 7.5,
                quiet: true,
              });
            drawPicture(pen.doc, drawn, PALETTE, { x, y: y + head, scale });
            x += drawn.width * scale + BETWEEN;
          });
          pen.box(left, y, width, height, 0.4);
        },
      },
      gap(BETWEEN),
    ];
  });
}
