/** What one person has shown, on paper: the skills, and the drawings that proved each that is held, with what was answered. */

import type { ProofSource, ProofsWanted } from '../../../shared/issued.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import { askQuestion } from '../../questions/index.ts';
import { FOOT, foot, PAGE, printing, WIDTH } from './document.ts';
import { drawingPieces } from './drawing-piece.ts';
import { type Block, besides, gap, type Piece, paginate, textPiece } from './flow.ts';
import { situationPieces } from './item-block.ts';
import { mm, type Pen } from './pen.ts';
import { type Proof, type Proving, proofsOf, type SkillStanding } from './proving-answers.ts';
import { heightOfRows, type Row, titleBlock } from './title-block.ts';

export interface EvidenceRequest {
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

const STATES = { held: 'held', fading: 'fading', 'not-yet': 'not yet' } as const;

/** Where a proof comes from. */
const SOURCES: Readonly<Record<ProofSource, string>> = {
  issued: 'practice, question issued to the learner',
  homework: 'homework',
  supervised: 'homework under supervision',
};

const WHOSE: Readonly<Record<ProofsWanted, string>> = {
  any: 'It counts what was issued to this learner and answered in its time: homework, and questions of practice. What else was practised is the learner’s own and proves nothing. Beside each drawing stands where the proof comes from.',
  supervised: 'It counts only homework that was sat under supervision, by the word of its tutor.',
};

const MEANS = [
  'Held: answered wholly right and without help on two different drawings, and by the model of memory not forgotten since. Fading: proven once, and now less than 90 % likely to be answered rightly; a refresher is due. Not yet: not proven, or lost since.',
  'It shows that somebody read these drawings rightly on those days. It does not show that somebody can work safely on a panel, and is no authorisation to.',
  'Who sat at the device is known only where somebody was watching. The drawings are made by a program, and the right answers are worked out by its solver.',
];

/** The first letters of a fingerprint are enough to find the circuit by. */
const short = (circuit: string): string => circuit.slice(0, 8);

const COLUMNS = [
  { title: 'Skill', width: mm(68) },
  { title: 'State', width: mm(18) },
  { title: 'Proven', width: mm(28) },
  { title: 'On', width: mm(34) },
  { title: 'Refresher due', width: mm(30) },
] as const;

function tableRow(pen: Pen, cells: readonly string[], heading = false): Piece {
  let at = 0;
  const parts = COLUMNS.map(({ width }, column) => {
    const piece = textPiece(pen, cells[column] ?? '', {
      width: width - mm(2),
      size: heading ? 7 : 9,
      quiet: heading,
      ...(column === 0 && !heading ? { face: 'bold' as const } : {}),
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
  { id, title, competence }: SkillStanding,
  proofs: ReadonlyMap<string, readonly Numbered[]>,
  day: EvidenceRequest['day'],
): Piece {
  if (competence.kind === 'not-yet')
    return tableRow(pen, [title, STATES['not-yet'], '', competence.begun ? 'begun' : 'not begun', '']);
  const own = proofs.get(id);
  const on = own
    ? `drawings ${own.map(({ number }) => number).join(' and ')}`
    : `circuits ${competence.provenOn.map(short).join(' and ')}`;
  return tableRow(pen, [title, STATES[competence.kind], day(competence.provenAt), on, day(competence.dueAt)]);
}

const ANSWERED = { asked: mm(88), given: mm(42) };

function answerRows(pen: Pen, { question, mark }: AnswerRecord): Piece[] {
  const labels = new Map(askQuestion(question).items.map(({ item, label }) => [item, label]));
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
    line(['Asked', 'Answered', 'Right'], true),
    ...mark.parts.map(({ item, given, right }) =>
      line([labels.get(item) ?? item, given ?? 'left out', right]),
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
  title: string,
  { number, circuit, answer }: Numbered,
  day: EvidenceRequest['day'],
  most: number,
): Block {
  if (!answer)
    return [
      heading(`Drawing ${number}: ${title}`, short(circuit)),
      textPiece(pen, 'This drawing is not among the answers that were given for this print.', {
        width: WIDTH,
        size: 9,
      }),
      gap(mm(4)),
    ];
  const { question, attempt } = answer.record;
  const { situation, task } = askQuestion(question);
  const share = `${Math.round(attempt.share * 100)} % right${attempt.help.hint ? ', after the hint' : ''}`;
  return [
    heading(`Drawing ${number}: ${title}`, `${day(answer.record.at)}   circuit ${short(circuit)}`),
    ...drawingPieces(question.circuit, WIDTH, most),
    gap(mm(1)),
    ...situationPieces(pen, situation, WIDTH, 9),
    textPiece(pen, task, { width: WIDTH, size: 9.5, face: 'bold' }),
    gap(mm(1)),
    ...answerRows(pen, answer.record),
    gap(mm(0.5)),
    textPiece(pen, `${share}; ${SOURCES[answer.source]}`, { width: WIDTH, size: 8, quiet: true }),
    gap(mm(5)),
  ];
}

/** Evidence for one person as a PDF, with name and date on every page, and what it shows and doesn't show. */
export function evidencePdf(request: EvidenceRequest): Promise<Uint8Array> {
  const { person, organisation, madeAt, made, day, skills, wanted, answers } = request;
  const print = printing(`Evidence: ${person.name}, ${madeAt}`, made);
  const { pen } = print;
  const proofs = numbered(skills, answers);
  const rowsOf = (page: string): Row[] => [
    {
      height: mm(12),
      cells: [
        {
          label: 'Evidence of skills in reading control drawings',
          text: person.name,
          share: 88,
          face: 'bold',
          size: 14,
        },
        { label: 'Organisation', text: organisation ?? '', share: 46 },
        { label: 'Made', text: madeAt, share: 26, size: 10 },
        { label: 'Page', text: page, share: 18, size: 10 },
      ],
    },
  ];
  const top = PAGE.top + heightOfRows(rowsOf('')) + mm(3.5);
  const room = PAGE.height - top - FOOT - PAGE.bottom;
  const blocks: Block[] = [
    [
      tableRow(
        pen,
        COLUMNS.map(({ title }) => title),
        true,
      ),
    ],
    ...skills.map((skill): Block => [skillRow(pen, skill, proofs, day)]),
    [
      gap(mm(3)),
      ...[WHOSE[wanted], ...MEANS].flatMap((text) => [
        textPiece(pen, text, { width: WIDTH, size: 9 }),
        gap(mm(1.5)),
      ]),
      gap(mm(3)),
    ],
    ...skills.flatMap(({ id, title }) =>
      (proofs.get(id) ?? []).map((proof) => proofBlock(pen, title, proof, day, room * 0.6)),
    ),
  ];
  const pages = paginate(blocks, () => room);
  pages.forEach((pieces, index) => {
    const page = `${index + 1} of ${pages.length}`;
    print.page((on) => {
      titleBlock(on, rowsOf(page));
      foot(on, `${madeAt}, page ${page}`);
    });
    print.place(pieces, PAGE.left, top);
  });
  return print.end();
}
