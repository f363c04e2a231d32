/** A class's papers to print: each with name and code, its drawings, and places to answer with a pen. */
import type { HomeworkSet, Paper } from '../../../shared/homework.ts';
import type { Words } from '../../words/index.ts';
import { codeInGroups } from '../paper-code.ts';
import { publicPaper } from '../papers/paper.ts';
import { FOOT, foot, type Out, PAGE, type Printing, printing, WIDTH } from './document.ts';
import { type Block, gap, heightOf, paginate, textPiece } from './flow.ts';
import { itemBlock } from './item-block.ts';
import { nameShown, shownOf } from './letters.ts';
import { mm } from './pen.ts';
import { heightOfRows, type Row, titleBlock } from './title-block.ts';

export interface PrintedPaper {
  /** As it is shown to others. */
  readonly name: string;
  /** The code under which its marks are entered (`codeOf`). */
  readonly code: string;
  readonly paper: Paper;
}

export interface ClassPapersRequest {
  readonly words: Words;
  readonly set: HomeworkSet;
  readonly className: string;
  /** The closing time in words, in the reader's own time zone. */
  readonly closes: string;
  /** All at once, or one after the other as they are wanted. */
  readonly papers: Iterable<PrintedPaper> | AsyncIterable<PrintedPaper>;
  /** When the file was made; written into it. */
  readonly made: Date;
  /** Takes the file piece by piece; nothing is given in the end then. */
  readonly out?: Out;
}

type Titles = Omit<PrintedPaper, 'paper'> & {
  readonly words: Words;
  readonly set: string;
  readonly className: string;
  readonly closes: string;
  readonly attempt: number;
  readonly marks: number;
};

function firstBlock(titles: Titles, page: string): Row[] {
  const { words, set, className, name, code, closes, attempt, marks } = titles;
  const { page: pageLabel, papers: say } = words.paper;
  return [
    {
      height: mm(16),
      cells: [
        { label: say.homework, text: set, share: 116, face: 'bold', size: 15 },
        { label: say.code, text: codeInGroups(code), share: 62, face: 'code', size: 22 },
      ],
    },
    {
      height: mm(11),
      cells: [
        { label: say.name, text: name, share: 116, face: 'bold', size: 12 },
        { label: say.className, text: className, share: 62 },
      ],
    },
    {
      height: mm(11),
      cells: [
        { label: say.closes, text: closes, share: 78 },
        { label: say.attempt, text: String(attempt), share: 16 },
        { label: pageLabel, text: page, share: 22 },
        { label: say.marksEarned, text: say.ofMarks(marks), share: 62, right: true },
      ],
    },
  ];
}

const nextBlock = ({ words: { paper }, set, name, code }: Titles, page: string): Row[] => [
  {
    height: mm(10),
    cells: [
      { label: paper.papers.homework, text: set, share: 58, size: 9 },
      { label: paper.papers.name, text: name, share: 50, size: 9, face: 'bold' },
      { label: paper.papers.code, text: codeInGroups(code), share: 48, size: 15, face: 'code' },
      { label: paper.page, text: page, share: 22, size: 10 },
    ],
  },
];

const GAP = mm(3.5);

function printPaper(print: Printing, request: ClassPapersRequest, { name, code, paper }: PrintedPaper): void {
  const { words, set, className, closes } = request;
  const { pen } = print;
  const say = words.paper.papers;
  const { title, attempt, items } = publicPaper(words, set, paper);
  const marks = items.reduce((sum, item) => sum + item.marks, 0);
  const titles: Titles = {
    words,
    set: title,
    className,
    closes,
    name: nameShown(name),
    code,
    attempt,
    marks,
  };
  const first = heightOfRows(firstBlock(titles, ''));
  const next = heightOfRows(nextBlock(titles, ''));
  const room = (page: number): number =>
    PAGE.height - PAGE.top - (page === 0 ? first : next) - GAP - FOOT - PAGE.bottom;
  // What is asked takes a quarter of a page, and has to stand with what it is asked about.
  const most = room(1) * 0.72;
  const how = { width: WIDTH, size: 8, quiet: true };
  const before: Block = [
    textPiece(pen, say.how, how),
    ...(shownOf(name).whole ? [] : [textPiece(pen, say.strangeName, how)]),
    gap(mm(2)),
  ];
  const blocks = items.map((item, index) =>
    itemBlock(pen, words, { number: index + 1, ...item }, WIDTH, {
      most,
      page: index === 0 ? room(0) - heightOf(before) : room(1),
    }),
  );
  const [opening = [], ...others] = blocks;
  const pages = paginate([[...before, ...opening], ...others], room);
  pages.forEach((pieces, index) => {
    const page = words.paper.pageOf({ page: index + 1, of: pages.length });
    const rows = index === 0 ? firstBlock(titles, page) : nextBlock(titles, page);
    print.page((on) => {
      titleBlock(on, rows);
      foot(on, words, say.foot({ code: codeInGroups(code), page }));
    });
    if (index === 0) print.entry(say.entry({ name, code: codeInGroups(code) }));
    print.place(pieces, PAGE.left, PAGE.top + heightOfRows(rows) + GAP);
  });
}

/**
 * The papers of a class as one PDF, in the order given, each beginning on a new page. Only what may be seen before submission
 * (`publicPaper`) gets to the print, so nothing in it tells an answer.
 */
export async function classPapersPdf(request: ClassPapersRequest): Promise<Uint8Array> {
  const { words, set, className, papers, made, out } = request;
  const title = words.paper.papers.title({ set: set.title, className });
  const print = printing(words, title, made, out);
  for await (const paper of papers) printPaper(print, request, paper);
  return print.end();
}
