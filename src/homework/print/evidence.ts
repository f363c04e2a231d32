/** What one person has shown, on paper: the skills, and the drawings that proved each that is held, with what was answered. */

import type { ProofsWanted } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { askQuestion, tellAnswer, tellQuestion } from '../../questions/index.ts';
import type { Words } from '../../words/index.ts';
import { FOOT, foot, PAGE, printing, WIDTH } from './document.ts';
import { drawingPieces } from './drawing-piece.ts';
import { type Block, besides, gap, type Piece, paginate, textPiece } from './flow.ts';
import { situationPieces } from './item-block.ts';
import { mm, type Pen } from './pen.ts';
import { type Proof, type Proving, proofsOf, type SkillStanding } from './proving-answers.ts';
import { heightOfRows, type Row, titleBlock } from './title-block.ts';

export interface EvidenceRequest {
  readonly words: Words;
  readonly person: { readonly name: string };
  readonly organisation?: string;
  /** The day it was made, in words. */
  readonly madeAt: string;
  readonly made: Date;
  /** A moment as a day, in the reader's own time zone. */
  readonly day: (at: number) => string;
  /** The person's row of the competence matrix (`standingsOf`). */
  readonly skills: readonly SkillStanding[];
  /** Of which proofs it was made: all, or those that somebody watched. */
  readonly wanted: ProofsWanted;
  /** Every answer that proves something, as it counts. */
  readonly answers: readonly Proving[];
}

/** The first letters of a fingerprint are enough to find the circuit by. */
const short = (circuit: string): string => circuit.slice(0, 8);

const COLUMNS = [
  { title: 'skill', width: mm(68) },
  { title: 'state', width: mm(18) },
  { title: 'proven', width: mm(28) },
  { title: 'on', width: mm(34) },
  { title: 'refresherDue', width: mm(30) },
] as const;

interface RowLike {
  readonly heading?: boolean;
  /** That the first cell is written in. */
  readonly language?: string | undefined;
}

function tableRow(pen: Pen, cells: readonly string[], { heading = false, language }: RowLike): Piece {
  let at = 0;
  const parts = COLUMNS.map(({ width }, column) => {
    const piece = textPiece(pen, cells[column] ?? '', {
      width: width - mm(2),
      size: heading ? 7 : 9,
      quiet: heading,
      ...(column === 0 && !heading ? { face: 'bold' as const } : {}),
      ...(column === 0 && language !== undefined ? { language } : {}),
    });
    const part = { at, piece };
    at += width;
    return part;
  });
  const row = besides(parts);
  const height = row.height + mm(2);
  return {
    height,
    tag: 'P',
    draw: (on, x, y) => {
      row.draw?.(on, x, y + mm(0.8));
      on.line(x, y + height, x + WIDTH, y + height, heading ? 0.8 : 0.25);
    },
  };
}

interface Numbered extends Proof {
  readonly number: number;
}

/** Proofs of all skills that are held, numbered through. */
function numbered(
  skills: readonly SkillStanding[],
  answers: readonly Proving[],
): ReadonlyMap<string, readonly Numbered[]> {
  let number = 0;
  return new Map(
    skills
      .filter(({ competence }) => competence.kind === 'held')
      .map((skill) => [skill.id, proofsOf(skill, answers).map((proof) => ({ ...proof, number: ++number }))]),
  );
}

function skillRow(
  pen: Pen,
  { speech, paper: { evidence: say } }: Words,
  { id, title, language, competence }: SkillStanding,
  proofs: ReadonlyMap<string, readonly Numbered[]>,
  day: EvidenceRequest['day'],
): Piece {
  const row = (cells: readonly string[]): Piece =>
    tableRow(pen, cells, { language: language === speech.language ? undefined : language });
  if (competence.kind === 'not-yet')
    return row([title, say.states['not-yet'], '', competence.begun ? say.begun : say.notBegun, '']);
  const own = proofs.get(id);
  const on = own
    ? say.onDrawings(own.map(({ number }) => number))
    : say.onCircuits(competence.provenOn.map(short));
  return row([title, say.states[competence.kind], day(competence.provenAt), on, day(competence.dueAt)]);
}

const ANSWERED = { asked: mm(88), given: mm(42) };

function answerRows(pen: Pen, words: Words, { question, mark }: AnswerRecord): Piece[] {
  const say = words.paper.evidence;
  const labels = new Map(
    tellQuestion(words, askQuestion(question)).items.map(({ item, label }) => [item, label]),
  );
  const line = (texts: readonly [string, string, string], heading = false): Piece => {
    const style = heading ? { size: 7, quiet: true } : { size: 9 };
    const last = WIDTH - ANSWERED.asked - ANSWERED.given;
    return besides([
      { at: 0, piece: textPiece(pen, texts[0], { width: ANSWERED.asked - mm(3), ...style }) },
      {
        at: ANSWERED.asked,
        piece: textPiece(pen, texts[1], {
          width: ANSWERED.given - mm(3),
          ...style,
          ...(heading ? {} : { face: 'bold' as const }),
        }),
      },
      { at: ANSWERED.asked + ANSWERED.given, piece: textPiece(pen, texts[2], { width: last, ...style }) },
    ]);
  };
  return [
    line([say.asked, say.answered, say.right], true),
    ...mark.parts.map(({ item, given, right }) =>
      line([
        labels.get(item) ?? item,
        given ? tellAnswer(words, given) : say.leftOut,
        tellAnswer(words, right),
      ]),
    ),
  ];
}

function heading(text: string, beside: string): Piece {
  return {
    height: mm(7),
    tag: 'H2',
    draw: (pen, x, y) => {
      pen.line(x, y, x + WIDTH, y, 1.2);
      const right = { size: 9 };
      const end = x + WIDTH - pen.width(beside, right);
      const bold = { size: 11, face: 'bold' } as const;
      pen.write(pen.cut(text, end - x - mm(4), bold), x, y + mm(4.8), bold);
      pen.write(beside, end, y + mm(4.8), right);
    },
  };
}

function proofBlock(
  pen: Pen,
  words: Words,
  title: string,
  { number, circuit, answer }: Numbered,
  day: EvidenceRequest['day'],
  most: number,
): Block {
  const say = words.paper.evidence;
  if (!answer)
    return [
      heading(say.drawing({ number, title }), short(circuit)),
      textPiece(pen, say.notGiven, {
        width: WIDTH,
        size: 9,
      }),
      gap(mm(4)),
    ];
  const { question, attempt } = answer.record;
  const { situation, task } = tellQuestion(words, askQuestion(question));
  const share = say.share({ percent: Math.round(attempt.share * 100), hint: attempt.help.hint });
  return [
    heading(
      say.drawing({ number, title }),
      say.dated({ day: day(answer.record.at), circuit: short(circuit) }),
    ),
    ...drawingPieces(question.circuit, words, WIDTH, most)(1),
    gap(mm(1)),
    ...situationPieces(pen, situation, WIDTH, 9),
    textPiece(pen, task, { width: WIDTH, size: 9.5, face: 'bold' }),
    gap(mm(1)),
    ...answerRows(pen, words, answer.record),
    gap(mm(0.5)),
    textPiece(pen, say.shareFrom({ share, source: say.sources[answer.source] }), {
      width: WIDTH,
      size: 8,
      quiet: true,
    }),
    gap(mm(5)),
  ];
}

/** Evidence for one person as a PDF, with name and date on every page, and what it shows and doesn't show. */
export function evidencePdf(request: EvidenceRequest): Promise<Uint8Array> {
  const { words, person, organisation, madeAt, made, day, skills, wanted, answers } = request;
  const { evidence: say, page: pageLabel, pageOf } = words.paper;
  const print = printing(words, say.title({ name: person.name, madeAt }), made);
  const { pen } = print;
  const proofs = numbered(skills, answers);
  const rowsOf = (page: string): Row[] => [
    {
      height: mm(12),
      cells: [
        {
          label: say.head,
          text: person.name,
          share: 88,
          face: 'bold',
          size: 14,
        },
        { label: say.organisation, text: organisation ?? '', share: 46 },
        { label: say.made, text: madeAt, share: 26, size: 10 },
        { label: pageLabel, text: page, share: 18, size: 10 },
      ],
    },
  ];
  const top = PAGE.top + heightOfRows(rowsOf('')) + mm(3.5);
  const room = PAGE.height - top - FOOT - PAGE.bottom;
  const blocks: Block[] = [
    [
      tableRow(
        pen,
        COLUMNS.map(({ title }) => say[title]),
        { heading: true },
      ),
    ],
    ...skills.map((skill): Block => [skillRow(pen, words, skill, proofs, day)]),
    [
      gap(mm(3)),
      ...[say.wanted[wanted], ...say.means].flatMap((text) => [
        textPiece(pen, text, { width: WIDTH, size: 9 }),
        gap(mm(1.5)),
      ]),
      gap(mm(3)),
    ],
    ...skills.flatMap(({ id, title }) =>
      (proofs.get(id) ?? []).map((proof) => proofBlock(pen, words, title, proof, day, room * 0.6)),
    ),
  ];
  const pages = paginate(blocks, () => room);
  pages.forEach((pieces, index) => {
    const page = pageOf({ page: index + 1, of: pages.length });
    print.page((on) => {
      titleBlock(on, rowsOf(page));
      foot(on, words, say.foot({ madeAt, page }));
    });
    print.place(pieces, PAGE.left, top);
  });
  return print.end();
}
