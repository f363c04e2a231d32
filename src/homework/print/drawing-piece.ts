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

function laidOut(words: Words, circuit: Circuit, width: number): Laid {
  // The paper layout without a page of its own: the item's page has frame and title block.
  const { page: _, ...paper } = PROFILES.a4;
  const scene = layOut(words, circuit, { ...paper, width: width / SCALE - 2 * MARGIN, margin: MARGIN });
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
 * The drawing at rest in a width, as large as drawings on paper are (capitals of 2 mm), and smaller only where there is no
 * room for it; laid out once, at whatever share of that size it is wanted. Nothing of it depends on a scenario.
 *
 * @param most - how high one sheet may be
 */
export function drawingPieces(
  circuit: Circuit,
  words: Words,
  width: number,
  most: number,
): (share: number) => Piece[] {
  const { scene, rows } = laidOut(words, circuit, width);
  const { picture } = picturesOf(scene);
  const head = scene.sheets.length > 1 ? HEAD : 0;
  const alone = rows.map((row) => {
    const [only] = row.length === 1 ? row : [];
    return Math.min(
      SCALE,
      only === undefined ? SCALE : width / picture(only).width,
      (most - head) / highest(scene, row),
    );
  });
  const alts = rows.map((row) =>
    row.map((sheet) => describe(words, circuit, { sheet: sheetAt(scene, sheet).sheet })).join(' '),
  );
  return (share) =>
    rows.flatMap((row, index): Piece[] => {
      const scale = alone[index]! * share;
      const height = highest(scene, row) * scale + head;
      return [
        {
          height,
          tag: 'Figure',
          alt: alts[index]!,
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
