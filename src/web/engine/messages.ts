/** What the page and its engine say to each other. The engine is a worker: the page never waits for the solver. */
import type { Bank } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import type { IssuedQuestion } from '../../../shared/issued.ts';
import type { PlanWishes } from '../../../shared/memory.ts';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { ToldProblem } from '../../../shared/problem.ts';
import type { Answer, Asked, Question, ToldMark } from '../../../shared/question.ts';
import type { Act, Fault, Scenario } from '../../../shared/scenario.ts';
import type { Placement } from '../../../shared/settings.ts';
import type { Outcome } from '../../../shared/solution.ts';
import type { Theme, Width } from '../../drawing/index.ts';
import type { Given, Judged, Placing, PlacingAnswer, Task } from '../../practice/index.ts';
import type { NumberedAnswer, StandingAhead } from './memory-kept.ts';

/** How drawings are wanted. */
export interface View {
  readonly width: Width;
  readonly theme: Theme;
}

/** A place on a sheet, in shares of its width and height. */
export interface Spot {
  /** What is asked by it: `-H1`, `-A1:I1`, or a terminal `-K3:11`. */
  readonly item: string;
  readonly kind: 'load' | 'coil' | 'input' | 'contact' | 'terminal';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** How far beside its place its target stands, in the drawing's pixels. */
  readonly aside?: number;
  /** Of a terminal on a symbol: the place as the drawing writes it, `/2.4`. */
  readonly place?: string;
}

/** A meter on two points of a sheet, in the drawing's pixels: its middle and size, and where its leads end. */
export interface MeterDrawn {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly ends: readonly [
    { readonly x: number; readonly y: number },
    { readonly x: number; readonly y: number },
  ];
}

export interface Sheet {
  readonly title: string;
  readonly svg: string;
  /** Pixels at which its lettering has its size. */
  readonly width: number;
  readonly height: number;
  readonly spots: readonly Spot[];
  readonly meter?: MeterDrawn;
}

export interface Drawn {
  readonly sheets: readonly Sheet[];
}

/** One moment of a run: what has just happened, and the picture of each sheet of the drawing it belongs to. */
export interface Frame {
  readonly caption: string;
  readonly svgs: readonly string[];
}

/** A picture by itself. */
export interface Picture {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
}

export interface Prepared {
  readonly task: Task;
  readonly asked: Asked;
  readonly drawn: Drawn;
  readonly skillTitle: string;
}

export interface Live {
  readonly outcome: Outcome;
  readonly drawn: Drawn;
  /** Acts that make sense as things stand, with their words. */
  readonly acts: readonly { readonly act: Act; readonly words: string }[];
  readonly readings: readonly { readonly item: string; readonly label: string; readonly state: string }[];
  /** What the meter shows, where it is connected: volts, or null where its points have no common reference. */
  readonly meter: { readonly volts: number | null } | undefined;
  /** By sheet: where a lead can be put or a conductor taken off; terminals close together on one conductor are one. */
  readonly points: readonly (readonly Spot[])[];
}

export interface SkillProgress {
  readonly skill: string;
  readonly title: string;
  readonly topic: string;
  /** shut: what it stands on is not held yet. */
  readonly standing: 'held' | 'fading' | 'begun' | 'open' | 'shut';
  /** Share of the marks to be expected now, 0 to 1. Null as long as there are too few answers to say. */
  readonly chance: number | null;
  readonly due: number | null;
}

export interface Progress {
  readonly skills: readonly SkillProgress[];
  /** Towards the assessment: questions each day, and what will not be ready. */
  readonly plan:
    | {
        readonly days: readonly { readonly at: number; readonly questions: number }[];
        /** The weakest first, with the share of the marks to be expected of it. */
        readonly notReady: readonly {
          readonly skill: string;
          readonly title: string;
          readonly share: number;
        }[];
        readonly average: number;
      }
    | { readonly problem: string }
    | null;
}

/** Requests by name: what each takes and gives. */
export interface Requests {
  open: { take: { bank: Bank }; give: { skills: number } };
  /** Answers that the engine hasn't been told of yet, or that count otherwise than before; the memory it goes by follows from all of them. */
  remember: {
    take: {
      answers: readonly NumberedAnswer[];
      /** Where the answers themselves are still on their way; null when they are here. As before unless it is given. */
      ahead?: StandingAhead | null;
      /** These are all: what was told before doesn't hold any more. */
      anew?: boolean;
    };
    give: { answers: number };
  };
  /** From now on these circuits are neither marked nor run: they stand on papers that are open. */
  guard: { take: { circuits: readonly string[] }; give: null };
  next: {
    take: {
      at: number;
      seed: string;
      number: number;
      recent: readonly string[];
      placement: Placement | null;
      /** Questions issued to the learner, in their order. */
      issued?: readonly IssuedQuestion[];
      /** Skills that a plan wants today. */
      planned?: readonly string[];
      /** How many skills may be begun in a day, where the learner has set it. */
      newADay?: number | null;
      only?: string;
      view: View;
    };
    give: Prepared | { readonly nothing: string };
  };
  /** A task that was made before, once more. */
  show: { take: { task: Task; view: View }; give: Prepared };
  hint: { take: { task: Task }; give: string };
  judge: {
    take: {
      task: Task;
      given: Given;
      /** The learner's latest answers, this one among them or not, in their order. */
      earlier: readonly AnswerRecord[];
      view: View;
    };
    /** The mark, and the drawing as it stands in the end; the circuit shown, of a wiring the one connected rightly. */
    give: {
      readonly judged: Judged;
      /** Its mark in words. */
      readonly mark: ToldMark;
      /** Twice in a row at least: its part of the lesson comes with the mark. */
      readonly goesWrong: boolean;
      readonly drawn: Drawn;
      readonly circuit: Circuit;
      readonly scenario: Scenario;
    };
  };
  /** The way to that end, moment by moment; the last one is the end. */
  run: {
    take: { question: Question; items: readonly string[]; view: View };
    give: { readonly frames: readonly Frame[]; readonly cutOff: boolean };
  };
  /** Has what isn't needed for the first question fetched. */
  rest: { take: Record<string, never>; give: null };
  /** `most`: after how many questions it is over. */
  placing: { take: { answers: readonly PlacingAnswer[]; most?: number }; give: Placing };
  draw: {
    take: { circuit: Circuit; scenario: Scenario | null; view: View };
    give: Drawn;
  };
  /** The drawing of a question as it is put: with what can be chosen on it, and nothing of the answer. */
  drawAsked: { take: { circuit: Circuit; asked: Asked; view: View }; give: Drawn };
  /** The drawing as it stands in the end, with what `items` ask picked out; the circuit shown, as `judge` has it. */
  drawMarked: {
    take: { question: Question; items: readonly string[]; view: View };
    give: { readonly drawn: Drawn; readonly circuit: Circuit; readonly scenario: Scenario };
  };
  words: { take: { circuit: Circuit }; give: readonly string[] };
  timing: { take: { circuit: Circuit; scenario: Scenario; view: View }; give: Picture };
  ask: { take: { question: Question }; give: Asked };
  mark: { take: { question: Question; answer: Answer }; give: ToldMark };
  progress: {
    take: { at: number; wishes: PlanWishes | null; placement: Placement | null; newADay?: number | null };
    give: Progress;
  };
  /** The skills that a plan towards an assessment wants today; null when there can be none. */
  planned: {
    take: { at: number; wishes: PlanWishes; placement: Placement | null; newADay?: number | null };
    give: readonly string[] | null;
  };
  live: {
    take: {
      circuit: Circuit;
      acts: readonly Act[];
      faults: readonly Fault[];
      meter?: readonly [string, string];
      view: View;
    };
    give: Live;
  };
  read: {
    take: { text: string; view: View };
    give: {
      readonly problems: readonly ToldProblem[];
      readonly findings: readonly ToldProblem[];
      readonly circuit: Circuit | undefined;
    };
  };
}

export type RequestName = keyof Requests;

export interface Request<K extends RequestName = RequestName> {
  readonly number: number;
  readonly name: K;
  readonly take: Requests[K]['take'];
  /** In which words are given. */
  readonly language: string;
}

export type Reply =
  | { readonly number: number; readonly ok: true; readonly give: unknown }
  /** The part of the engine that does it could not be fetched. */
  | { readonly number: number; readonly ok: false; readonly missing: true }
  | {
      readonly number: number;
      readonly ok: false;
      readonly message: string;
      /** The fingerprint of a circuit that is on an open paper, where that is why. */
      readonly onOpenPaper?: string;
    };

/** What puts a question waits for what draws it. */
type Waiting = 'next' | 'show';

/** What does the work of each request. */
export type Handlers<K extends RequestName = RequestName> = {
  readonly [N in K]: (
    take: Requests[N]['take'],
  ) => N extends Waiting ? Promise<Requests[N]['give']> : Requests[N]['give'];
};
