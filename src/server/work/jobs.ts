/**
 * Work that takes long, or that others have made up: done apart from the thread that answers requests. Each job is a function of
 * what can be sent from one thread to another.
 */
import type {
  HomeworkPlace,
  HomeworkSet,
  Paper,
  PaperMark,
  SavedAnswer,
  Seat,
} from '../../../shared/homework.ts';
import type { SamplePaper } from '../../../shared/homework-views.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Checked } from '../../../shared/problem.ts';
import type { Mark, Question, ToldMark } from '../../../shared/question.ts';
import {
  type MarksRow,
  markInSteps,
  marksHead,
  marksLine,
  type PlacesRequest,
  paperInSteps,
  placesInSteps,
  type QtiRequest,
  qtiPackage,
  type XapiRequest,
  xapiStatements,
} from '../../homework/index.ts';
import {
  type AnswerKeyRequest,
  answerKeyPdf,
  type ClassPapersRequest,
  classPapersPdf,
  type EvidenceRequest,
  evidencePdf,
  type Out,
  type PrintedPaper,
} from '../../homework/print/index.ts';
import type { Course } from '../../practice/index.ts';
import { blankAnswer, explain, markAnswer, publicQuestion, tellMark } from '../../questions/index.ts';
import { coreWords } from '../../words/core.ts';
import type { Words } from '../../words/index.ts';
import { type IssueToLookAt, type Look, lookAgain } from '../look-again.ts';
import { inTurns } from '../turns.ts';

/** What a job may ask and hand over while it runs. */
export interface Talk {
  /** The next of what it works on; undefined after the last one. */
  next<T>(): Promise<T | undefined>;
  /** Hands over a piece of what it makes, and waits until there is room for more. */
  give(piece: Uint8Array): Promise<void>;
}

/** What `markPaper` takes, in a form that can be sent. */
export interface PaperToMark {
  readonly paper: Paper;
  readonly counted: ReadonlyMap<number, SavedAnswer>;
}

/** A practice answer, and the circuits of which nothing may be told. */
export interface AnswerToLookAt {
  readonly record: AnswerRecord;
  readonly guarded: ReadonlySet<string>;
  readonly issued: IssueToLookAt | null;
}

export interface PaperToMake {
  readonly set: HomeworkSet;
  readonly seat: Seat;
  /** Circuits that others have, by place. */
  readonly taken: ReadonlyMap<number, ReadonlySet<string>>;
}

export interface PlacesToChoose {
  /** The skills that are wished, of a course. */
  readonly skills: Course['skills'];
  readonly request: PlacesRequest;
}

type SampleItem = SamplePaper['items'][number];

/** Whatever speaks is sent the language; the words stay in the thread. */
export type Spoken<R extends { readonly words: Words }> = Omit<R, 'words'> & { readonly language: string };

async function withWords<R extends { readonly words: Words }>({ language, ...request }: Spoken<R>) {
  return { ...request, words: await coreWords(language) } as unknown as R;
}

function* explained(words: Words, items: Paper['items']): Generator<undefined, SampleItem[]> {
  const told: SampleItem[] = [];
  for (const [index, item] of items.entries()) {
    const { question } = item;
    const mark = tellMark(words, markAnswer(question, blankAnswer(question)), explain(question));
    told.push({ place: index + 1, item, question: publicQuestion(words, question), mark });
    yield undefined;
  }
  return told;
}

/** A question with the mark that an answer to it got. */
export interface MarkToTell {
  readonly question: Question;
  readonly mark: Mark;
}

function* toldMarks(words: Words, marks: readonly MarkToTell[]): Generator<undefined, ToldMark[]> {
  const told: ToldMark[] = [];
  for (const { question, mark } of marks) {
    told.push(tellMark(words, { mark, problems: [] }, explain(question)));
    yield undefined;
  }
  return told;
}

/** What `classPapersPdf` takes but for the papers, which are asked for one by one. */
export type PapersToPrint = Omit<Spoken<ClassPapersRequest>, 'papers' | 'out'>;
export type KeyToPrint = Omit<Spoken<AnswerKeyRequest>, 'papers' | 'out'>;

export interface EvidenceToPrint extends Omit<Spoken<EvidenceRequest>, 'day' | 'madeAt'> {
  /** In which days are told: `Europe/Berlin`. */
  readonly zone: string;
}

export interface PaperToExplain extends Pick<Paper, 'items'> {
  readonly language: string;
}

export interface MarksToTell {
  readonly language: string;
  readonly marks: readonly MarkToTell[];
}

export interface MarksToState extends Pick<XapiRequest, 'set' | 'base'> {
  readonly language: string;
}

/** A marked paper of which statements are made, with the ids of its statements. */
export interface PaperToState extends Pick<XapiRequest, 'mark' | 'account' | 'at'> {
  readonly uuids: ReadonlyMap<number | 'paper', string>;
}

/** Papers (or their marks) one by one, and the file piece by piece: neither of them is ever held whole. */
async function inPieces<T>(
  { next, give }: Talk,
  make: (each: AsyncIterable<T>, out: Out) => Promise<unknown>,
): Promise<void> {
  let pieces: Uint8Array[] = [];
  const giveAll = async (): Promise<void> => {
    const whole = Buffer.concat(pieces);
    pieces = [];
    if (whole.length > 0) await give(whole);
  };
  async function* each(): AsyncGenerator<T> {
    for (;;) {
      await giveAll();
      const one = await next<T>();
      if (one === undefined) return;
      yield one;
    }
  }
  await make(each(), (piece) => pieces.push(piece));
  await giveAll();
}

export const jobs = {
  /** What this server's solver makes of a practice answer. */
  lookAgain: async ({ record, guarded, issued }: AnswerToLookAt): Promise<Look> =>
    lookAgain(record, guarded, issued),
  choosePlaces: ({ skills, request }: PlacesToChoose): Promise<Checked<readonly HomeworkPlace[]>> =>
    inTurns(placesInSteps({ skills }, request)),
  makePaper: ({ set, seat, taken }: PaperToMake): Promise<Checked<Paper>> =>
    inTurns(paperInSteps(set, seat, (place, circuit) => taken.get(place)?.has(circuit) === true)),
  markPaper: ({ paper, counted }: PaperToMark): Promise<PaperMark> => inTurns(markInSteps(paper, counted)),
  printPapers: (request: PapersToPrint, talk: Talk): Promise<void> =>
    inPieces<PrintedPaper>(talk, async (papers, out) =>
      classPapersPdf(await withWords<ClassPapersRequest>({ ...request, papers, out })),
    ),
  printKey: (request: KeyToPrint, talk: Talk): Promise<void> =>
    inPieces<PrintedPaper>(talk, async (papers, out) =>
      answerKeyPdf(await withWords<AnswerKeyRequest>({ ...request, papers, out })),
    ),
  printEvidence: async ({ zone, ...request }: EvidenceToPrint): Promise<Uint8Array> => {
    const { dates } = (await coreWords(request.language)).server;
    const day = (at: number): string => dates.day({ at, zone });
    return evidencePdf(
      await withWords<EvidenceRequest>({ ...request, day, madeAt: day(request.made.getTime()) }),
    );
  },
  /** The marks of a set as a table, from a line for each learner. */
  tableMarks: ({ set }: { readonly set: HomeworkSet }, talk: Talk): Promise<void> =>
    inPieces<MarksRow>(talk, async (rows, out) => {
      out(Buffer.from(marksHead(set)));
      for await (const row of rows) out(Buffer.from(marksLine(set, row)));
    }),
  /** The marks of a set as a JSON list with a statement on each line. */
  stateMarks: ({ language, ...request }: MarksToState, talk: Talk): Promise<void> =>
    inPieces<PaperToState>(talk, async (papers, out) => {
      const words = await coreWords(language);
      let before = '[\n';
      for await (const { uuids, ...paper } of papers)
        for (const statement of xapiStatements({
          words,
          ...request,
          ...paper,
          uuidFor: (what) => uuids.get(what)!,
        })) {
          out(Buffer.from(before + JSON.stringify(statement)));
          before = ',\n';
        }
      out(Buffer.from(before === '[\n' ? '[]\n' : '\n]\n'));
    }),
  packQti: async (request: Spoken<QtiRequest>): Promise<Uint8Array> =>
    qtiPackage(await withWords<QtiRequest>(request)),
  /** The items of a paper as its tutor is shown them, with the right answers. */
  explainPaper: async ({ language, items }: PaperToExplain): Promise<SamplePaper['items']> =>
    inTurns(explained(await coreWords(language), items)),
  /** Marks in words, with the explanations. */
  tellMarks: async ({ language, marks }: MarksToTell): Promise<ToldMark[]> =>
    inTurns(toldMarks(await coreWords(language), marks)),
};

export type Jobs = typeof jobs;
export type JobName = keyof Jobs;
export type JobInput<N extends JobName> = Parameters<Jobs[N]>[0];
export type JobOutput<N extends JobName> = Awaited<ReturnType<Jobs[N]>>;
