/** A text as a square of dark and light modules for a phone's camera (QR Code, ISO/IEC 18004), drawn as one path. */
import qrcode from 'qrcode-generator';
import { PALETTE, type Pen } from './pen.ts';

/** Light modules round it, without which cameras don't find it (ISO/IEC 18004, from memory). */
const QUIET = 4;

/** Rows of modules, dark ones true; error correction M restores about 15 %. */
export function modulesOf(text: string): boolean[][] {
  const code = qrcode(0, 'M');
  code.addData(text);
  code.make();
  const count = code.getModuleCount();
  return Array.from({ length: count }, (_, row) =>
    Array.from({ length: count }, (__, column) => code.isDark(row, column)),
  );
}

/** Draws the square with its quiet zone in a width and height of `size`. */
export function drawQr(pen: Pen, text: string, x: number, y: number, size: number): void {
  const modules = modulesOf(text);
  const step = size / (modules.length + 2 * QUIET);
  const { doc } = pen;
  modules.forEach((row, down) => {
    for (let from = 0; from < row.length; from++) {
      if (!row[from]) continue;
      let to = from;
      while (row[to]) to++;
      doc.rect(x + (QUIET + from) * step, y + (QUIET + down) * step, (to - from) * step, step);
      from = to;
    }
  });
  doc.fill(PALETTE.ink);
}
