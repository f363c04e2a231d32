/** Slips to cut out and hand over: how to join a class, with the class's code or with a link of one's own. */
import type { Words } from '../../words/index.ts';
import { PAGE, printing } from './document.ts';
import { mm, type Pen } from './pen.ts';
import { drawQr } from './qr.ts';

export interface JoiningSlip {
  /** For whom; null for whoever takes it. */
  readonly name: string | null;
  /** A link that signs its owner in once; null where the class's code is enough. */
  readonly link: string | null;
}

export interface JoiningSlipsRequest {
  readonly words: Words;
  readonly className: string;
  /** The class's joining code as it is to be printed, in groups. */
  readonly code: string;
  /** Where the program is reached, such as `https://practice.example`. */
  readonly address: string;
  readonly slips: readonly JoiningSlip[];
  readonly made: Date;
}

const COLUMNS = 2;
const ROWS = 5;
const WIDE = PAGE.width / COLUMNS;
const HIGH = PAGE.height / ROWS;
const PAD = mm(8);
const SQUARE = mm(32);
const PLAIN = { size: 9 } as const;
const STEP = mm(1.2);

/** Numbered steps under one another; returns where they end. */
function steps(pen: Pen, texts: readonly string[], x: number, from: number, width: number): number {
  let y = from;
  texts.forEach((text, index) => {
    pen.write(`${index + 1}.`, x, y, { ...PLAIN, face: 'bold' });
    for (const line of pen.wrap(text, width - mm(5), PLAIN)) {
      pen.write(line, x + mm(5), y, PLAIN);
      y += PLAIN.size * 1.25;
    }
    y += STEP;
  });
  return y;
}

function drawSlip(
  pen: Pen,
  request: JoiningSlipsRequest,
  { name, link }: JoiningSlip,
  left: number,
  top: number,
): void {
  const { className, code, address } = request;
  const say = request.words.paper.slips;
  const x = left + PAD;
  const width = WIDE - 2 * PAD;
  const beside = link === null ? width : width - SQUARE - mm(1);
  let y = top + PAD + mm(2.5);
  const head = { size: 12, face: 'bold' } as const;
  pen.write(pen.cut(className, beside, head), x, y, head);
  y += mm(5);
  if (name !== null) {
    const whose = { size: 10 };
    pen.write(pen.cut(say.for(name), beside, whose), x, y, whose);
    y += mm(5);
  }
  y += mm(1);
  if (link === null) {
    y = steps(pen, say.byCode(address), x, y, width);
    const large = { size: 20, face: 'code' } as const;
    const base = Math.max(y + mm(6), top + HIGH - PAD - mm(1));
    pen.write(say.code, x, base, { size: 7, quiet: true });
    pen.write(code, x + mm(9), base, large);
    return;
  }
  drawQr(pen, link, left + WIDE - PAD - SQUARE + mm(2), top + PAD - mm(3), SQUARE);
  y = steps(pen, say.byLink(address), x, y, beside);
  const small = { size: 6.5 } as const;
  const lines = pen.wrap(link, width, small);
  const base = Math.max(y + mm(1), top + HIGH - PAD + mm(2.5) - lines.length * mm(2.8));
  lines.forEach((line, index) => {
    pen.write(line, x, base + index * mm(2.8), small);
  });
}

/** Where to cut. */
function cuts(pen: Pen): void {
  for (let column = 1; column < COLUMNS; column++)
    pen.line(column * WIDE, 0, column * WIDE, PAGE.height, 0.4, 3);
  for (let row = 1; row < ROWS; row++) pen.line(0, row * HIGH, PAGE.width, row * HIGH, 0.4, 3);
}

/** Slips as a PDF, ten a page, with lines to cut along. */
export function joiningSlipsPdf(request: JoiningSlipsRequest): Promise<Uint8Array> {
  const { words, className, slips, made } = request;
  const print = printing(words, words.paper.slips.title(className), made);
  const each = COLUMNS * ROWS;
  for (let from = 0; from < Math.max(1, slips.length); from += each) {
    print.page(cuts);
    const placed = slips.slice(from, from + each).map((slip, index) => ({
      y: Math.floor(index / COLUMNS) * HIGH,
      piece: {
        height: HIGH,
        tag: 'P' as const,
        draw: (pen: Pen, _: number, y: number) => drawSlip(pen, request, slip, (index % COLUMNS) * WIDE, y),
      },
    }));
    print.place(placed, 0, 0);
  }
  return print.end();
}
