/** One item of a printed paper: number and marks, the drawing, the question in words, places to answer, a box for the mark. */
import type { PublicQuestion } from '../../../shared/question.ts';
import type { Words } from '../../words/index.ts';
import { answerSpace } from './answer-space.ts';
import { drawingPieces } from './drawing-piece.ts';
import { type Block, gap, type Piece, paginate, textPiece } from './flow.ts';
import { mm, type Pen } from './pen.ts';

/** Sentences run on; what has a number stands on a line of its own. */
export function situationPieces(pen: Pen, situation: readonly string[], width: number, size = 9.5): Piece[] {
  const paragraphs: { text: string; indent: number }[] = [];
  for (const sentence of situation) {
    const last = paragraphs.at(-1);
    const numbered = /^[0-9]+\. /.test(sentence);
    if (numbered || !last || last.indent > 0)
      paragraphs.push({ text: sentence, indent: numbered ? mm(5) : 0 });
    else last.text += ` ${sentence}`;
  }
  return paragraphs.map(({ text, indent }) => textPiece(pen, text, { width, indent, size }));
}

const HEAD = mm(9);
const BOX = mm(26);

interface Head {
  readonly number: number;
  readonly kind: string;
  readonly subject: string;
  readonly marks: number;
}

/** `3  Lamps  2 marks`, and on the right the box for the mark: earned of so many. */
function head({ paper: { papers } }: Words, { number, kind, subject, marks }: Head, width: number): Piece {
  const worth = papers.marks(marks);
  return {
    height: HEAD,
    tag: 'H2',
    draw: (pen, x, y) => {
      const base = y + mm(5.6);
      pen.line(x, y, x + width, y, 1.2);
      pen.write(String(number), x, base, { size: 14, face: 'bold' });
      const at = x + mm(9);
      pen.write(kind, at, base, { size: 11, face: 'bold' });
      const after = at + pen.width(kind, { size: 11, face: 'bold' }) + mm(4);
      pen.write(worth, after, base, { size: 9.5 });
      const from = after + pen.width(worth, { size: 9.5 }) + mm(4);
      const room = x + width - BOX - mm(3) - from;
      pen.write(pen.cut(subject, room, { size: 8.5 }), from, base, { size: 8.5, quiet: true });
      pen.box(x + width - BOX, y, BOX, mm(7.6), 0.8);
      pen.line(x + width - BOX / 2, y, x + width - BOX / 2, y + mm(7.6), 0.4);
      pen.write(papers.earned, x + width - BOX + mm(1.2), y + mm(2.6), { size: 6, quiet: true });
      pen.write(papers.ofMarks(marks), x + width - BOX / 2 + mm(2), y + mm(5.4), { size: 10 });
    },
  };
}

export interface ItemToPrint {
  /** From 1. */
  readonly number: number;
  readonly marks: number;
  readonly question: PublicQuestion;
}

/** How much smaller than on its own a drawing may be so that its item takes fewer pages. */
const SMALLEST = 0.7;
/** Halvings of what is left between too large and small enough. */
const STEPS = 12;

/** The largest share of its size at which the drawing of a block lets it stand on as few pages as the smallest would. */
function shareFor(block: (share: number) => Block, page: number): number {
  const pagesAt = (share: number): number => paginate([block(share)], () => page).length;
  const fewest = pagesAt(SMALLEST);
  if (pagesAt(1) === fewest) return 1;
  let [fits, not] = [SMALLEST, 1];
  for (let step = 0; step < STEPS; step++) {
    const middle = (fits + not) / 2;
    if (pagesAt(middle) === fewest) fits = middle;
    else not = middle;
  }
  return fits;
}

/**
 * @param most - how high one sheet of its drawing may be
 * @param page - how high a page is
 */
export function itemBlock(
  pen: Pen,
  words: Words,
  { number, marks, question }: ItemToPrint,
  width: number,
  { most, page }: { readonly most: number; readonly page: number },
): Block {
  const { circuit, asked } = question;
  const title = head(words, { number, kind: asked.title, subject: circuit.title ?? '', marks }, width);
  const below = [
    gap(mm(1)),
    ...situationPieces(pen, asked.situation, width),
    ...(asked.cautions.length > 0
      ? [
          gap(mm(1)),
          textPiece(pen, words.paper.caution(asked.cautions.join(' ')), { width, size: 7.5, quiet: true }),
        ]
      : []),
    gap(mm(1.5)),
    textPiece(pen, asked.task, { width, size: 10, face: 'bold' }),
    gap(mm(1)),
    ...answerSpace(pen, words, asked, width),
  ];
  const drawing = drawingPieces(circuit, words, width, most);
  const block = (share: number): Block => [title, ...drawing(share), ...below, gap(mm(5))];
  return block(shareFor(block, page));
}
