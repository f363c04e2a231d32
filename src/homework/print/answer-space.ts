/** Where a pen answers: squares to tick for each thing asked and each state, lines for terminals, a line for volts. */
import type { Asked, AskedItem } from '../../../shared/question.ts';
import type { Words } from '../../words/index.ts';
import { gap, type Piece, textPiece } from './flow.ts';
import { mm, type Pen } from './pen.ts';

const SQUARE = mm(3.4);
const ROW = mm(6.2);
const BASE = mm(4.3);
const LABEL = { size: 9.5 };
const CHOICE = { size: 9.5 };
const BETWEEN = mm(8);

/** The squares with their words, ending at `right`. Every row of a table has them at the same place. */
class Squares {
  private readonly choices: readonly string[];
  private readonly widths: readonly number[];

  constructor(pen: Pen, choices: readonly string[]) {
    this.choices = choices;
    this.widths = choices.map((choice) => SQUARE + mm(1.4) + pen.width(choice, CHOICE) + mm(4));
  }

  get width(): number {
    return this.widths.reduce((sum, width) => sum + width, 0);
  }

  draw(pen: Pen, right: number, y: number): void {
    let x = right - this.width;
    this.choices.forEach((choice, index) => {
      pen.box(x, y + BASE - SQUARE + mm(0.4), SQUARE, SQUARE, 0.7);
      pen.write(choice, x + SQUARE + mm(1.4), y + BASE, CHOICE);
      x += this.widths[index]!;
    });
  }
}

interface Line {
  readonly label: string;
  readonly choices: readonly string[];
}

/** One thing asked with its squares; the label takes as many lines as it needs. */
function tickLine(pen: Pen, { label, choices }: Line, width: number): Piece {
  const squares = new Squares(pen, choices);
  const lines = pen.wrap(label, width - squares.width - mm(2), LABEL);
  const height = ROW + (lines.length - 1) * LABEL.size * 1.2;
  return {
    height,
    tag: 'P',
    draw: (on, x, y) => {
      lines.forEach((line, index) => {
        on.write(line, x, y + BASE + index * LABEL.size * 1.2, LABEL);
      });
      squares.draw(on, x + width, y);
      on.line(x, y + height, x + width, y + height, 0.25);
    },
  };
}

/** Two beside one another where every label fits on one line then. */
function tickLines(pen: Pen, lines: readonly Line[], width: number): Piece[] {
  const half = (width - BETWEEN) / 2;
  const fits = ({ label, choices }: Line): boolean =>
    pen.width(label, LABEL) + new Squares(pen, choices).width + mm(2) <= half;
  if (lines.length < 2 || !lines.every(fits)) return lines.map((line) => tickLine(pen, line, width));
  const rows = Math.ceil(lines.length / 2);
  return Array.from({ length: rows }, (_, row): Piece => {
    const [left, right] = [lines[row]!, lines[row + rows]];
    const one = tickLine(pen, left, half);
    const other = right && tickLine(pen, right, half);
    return {
      height: one.height,
      tag: 'P',
      draw: (on, x, y) => {
        one.draw?.(on, x, y);
        other?.draw?.(on, x + half + BETWEEN, y);
      },
    };
  });
}

/** A line to write on, from `x`, with what stands before and behind it. Returns where it ends. */
function writingLine(pen: Pen, before: string, x: number, y: number, length: number, behind = ''): number {
  pen.write(before, x, y + BASE, LABEL);
  const from = x + pen.width(before, LABEL) + (before ? mm(1.5) : 0);
  pen.line(from, y + BASE + mm(0.6), from + length, y + BASE + mm(0.6), 0.6);
  pen.write(behind, from + length + mm(1.5), y + BASE, LABEL);
  return from + length + mm(1.5) + (behind ? pen.width(behind, LABEL) + mm(5) : mm(4));
}

/** Steps of a sequence: what is asked after how many acts, apart from the words for that moment. */
function byMoment(items: readonly AskedItem[]): { readonly moment: string; readonly lines: Line[] }[] {
  const groups: { moment: string; lines: Line[] }[] = [];
  items.forEach(({ label, choices, moment = '', named }, index) => {
    const line = { label: `${index + 1}.  ${named?.label ?? label}`, choices };
    const last = groups.at(-1);
    if (last?.moment === moment) last.lines.push(line);
    else groups.push({ moment, lines: [line] });
  });
  return groups;
}

const HOW = { size: 8, quiet: true };

function choiceSpace(pen: Pen, { paper: { space } }: Words, { items, how }: Asked, width: number): Piece[] {
  const [{ about, choices }] = items as [AskedItem];
  const [from = '', to = ''] = about;
  const numbered = choices.map((choice, index) => `${index + 1}.  ${choice}`);
  const widest = Math.max(...numbered.map((text) => pen.width(text, LABEL))) + mm(8);
  const columns = Math.max(1, Math.floor(width / widest));
  const rows = Array.from(
    { length: Math.ceil(numbered.length / columns) },
    (_, row): Piece => ({
      height: ROW - mm(1),
      tag: 'P',
      draw: (on, x, y) => {
        numbered.slice(row * columns, (row + 1) * columns).forEach((text, column) => {
          on.write(text, x + column * widest, y + BASE, LABEL);
        });
      },
    }),
  );
  return [
    ...rows,
    {
      height: ROW + mm(2),
      tag: 'P',
      draw: (on, x, y) => {
        const next = writingLine(on, space.numberOfChoice, x, y + mm(1), mm(12));
        const then = writingLine(on, space.orFromTo(from), next, y + mm(1), mm(24));
        writingLine(on, space.and, then, y + mm(1), mm(24), space.toEnd(to));
      },
    },
    textPiece(pen, how, { width, ...HOW }),
  ];
}

function readingSpace(pen: Pen, { paper: { space } }: Words, { items, how }: Asked, width: number): Piece[] {
  const [{ label }] = items as [AskedItem];
  return [
    {
      height: ROW + mm(2),
      tag: 'P',
      draw: (on, x, y) => {
        const next = writingLine(on, space.reading(label), x, y + mm(1), mm(28), 'V');
        on.box(next, y + mm(1.4) + BASE - SQUARE, SQUARE, SQUARE, 0.7);
        on.write(space.nothing, next + SQUARE + mm(1.4), y + mm(1) + BASE, CHOICE);
      },
    },
    textPiece(pen, how, { width, ...HOW }),
  ];
}

/** Squares for each thing asked; what is asked at several moments stands under each of them. */
function statesSpace(pen: Pen, { items }: Asked, width: number): Piece[] {
  if (items.every(({ moment }) => moment === undefined)) return tickLines(pen, items, width);
  return byMoment(items).flatMap(({ moment, lines }) => [
    gap(mm(1.2)),
    textPiece(pen, moment, { width, size: 9, face: 'bold' }),
    ...tickLines(pen, lines, width),
  ]);
}

/** Places to answer a question with a pen, in a width. */
export function answerSpace(pen: Pen, words: Words, asked: Asked, width: number): Piece[] {
  switch (asked.form) {
    case 'states':
      return statesSpace(pen, asked, width);
    case 'choice':
      return choiceSpace(pen, words, asked, width);
    case 'reading':
      return readingSpace(pen, words, asked, width);
  }
}
