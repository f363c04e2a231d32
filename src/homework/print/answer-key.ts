/** The key to a class's printed papers, sorted by code: separate from them, and not for learners. */
import type { HomeworkSet } from '../../../shared/homework.ts';
import type { Words } from '../../words/index.ts';
import { codeInGroups } from '../paper-code.ts';
import type { ClassPapersRequest, PrintedPaper } from './class-papers.ts';
import { FOOT, foot, type Out, PAGE, printing, WIDTH } from './document.ts';
import { type Block, besides, gap, type Piece, paginate, textPiece } from './flow.ts';
import { type KeyItem, keyOf } from './key-of.ts';
import { nameShown } from './letters.ts';
import { mm, type Pen } from './pen.ts';
import { heightOfRows, type Row, titleBlock } from './title-block.ts';

export interface AnswerKeyRequest {
  readonly words: Words;
  readonly set: HomeworkSet;
  readonly className: string;
  /** In any order; all at once, or one after the other as they are wanted. */
  readonly papers: ClassPapersRequest['papers'];
  readonly made: Date;
  /** Takes the file piece by piece; nothing is given in the end then. */
  readonly out?: Out;
}

const NUMBER = mm(8);
const WORTH = mm(46);
const ANSWER = WIDTH - NUMBER - WORTH - mm(3);

/** Number, right answer and what its parts are worth beside one another; the why under them. */
function itemPiece(
  pen: Pen,
  { paper: { key } }: Words,
  { number, marks, answer, note, each, why }: KeyItem,
): Piece {
  const right = besides([
    { at: 0, piece: textPiece(pen, String(number), { width: NUMBER, size: 8.5, face: 'bold' }) },
    {
      at: NUMBER,
      piece: textPiece(pen, note ? key.withNote({ answer, note }) : answer, {
        width: ANSWER,
        size: 8.5,
        face: 'bold',
      }),
    },
    { at: WIDTH - WORTH, piece: textPiece(pen, key.worth({ marks, each }), { width: WORTH, size: 7.5 }) },
  ]);
  const reason = textPiece(pen, why, { width: WIDTH, indent: NUMBER, size: 6.5, quiet: true, most: 2 });
  return {
    height: right.height + reason.height + mm(0.6),
    tag: 'P',
    draw: (on, x, y) => {
      right.draw?.(on, x, y);
      reason.draw?.(on, x, y + right.height);
    },
  };
}

function paperHead(name: string, code: string, whole: string): Piece {
  return {
    height: mm(7),
    tag: 'H2',
    draw: (pen, x, y) => {
      const large = { size: 13, face: 'code' } as const;
      pen.line(x, y, x + WIDTH, y, 1.2);
      pen.write(codeInGroups(code), x, y + mm(4.6), large);
      const from = x + pen.width(codeInGroups(code), large) + mm(5);
      const end = x + WIDTH - pen.width(whole, { size: 9 });
      pen.write(pen.cut(name, end - from - mm(3), { size: 10, face: 'bold' }), from, y + mm(4.6), {
        size: 10,
        face: 'bold',
      });
      pen.write(whole, end, y + mm(4.6), { size: 9 });
    },
  };
}

function paperBlock(pen: Pen, words: Words, { name, code, paper }: PrintedPaper): Block {
  const { key, papers } = words.paper;
  const items = keyOf(words, paper);
  const outOf = items.reduce((sum, { marks }) => sum + marks, 0);
  return [
    paperHead(nameShown(name) || key.nameless, code, papers.ofMarks(outOf)),
    ...items.map((item) => itemPiece(pen, words, item)),
    gap(mm(4)),
  ];
}

/** The key as a PDF: for each paper, by code, the right answers in words, what each part is worth, and the short why. */
export async function answerKeyPdf({
  words,
  set,
  className,
  papers,
  made,
  out,
}: AnswerKeyRequest): Promise<Uint8Array> {
  const { key, page: pageLabel, pageOf, papers: say } = words.paper;
  const print = printing(words, key.title({ set: set.title, className }), made, out);
  const { pen } = print;
  const keys: { readonly code: string; readonly block: Block }[] = [];
  for await (const paper of papers) keys.push({ code: paper.code, block: paperBlock(pen, words, paper) });
  keys.sort((one, other) => (one.code < other.code ? -1 : one.code > other.code ? 1 : 0));
  const blocks: Block[] = [
    [textPiece(pen, key.rule, { width: WIDTH, size: 8, quiet: true }), gap(mm(2))],
    ...keys.map(({ block }) => block),
  ];
  const rowsOf = (page: string): Row[] => [
    {
      height: mm(11),
      cells: [
        { label: key.head, text: set.title, share: 100, face: 'bold', size: 12 },
        { label: say.className, text: className, share: 52 },
        { label: pageLabel, text: page, share: 26 },
      ],
    },
  ];
  const top = PAGE.top + heightOfRows(rowsOf('')) + mm(3.5);
  const pages = paginate(blocks, () => PAGE.height - top - FOOT - PAGE.bottom);
  pages.forEach((pieces, index) => {
    const page = pageOf({ page: index + 1, of: pages.length });
    print.page((on) => {
      titleBlock(on, rowsOf(page));
      foot(on, words, key.foot(page));
    });
    print.place(pieces, PAGE.left, top);
  });
  return print.end();
}
