/** What the page and its engine say to each other. The engine is a worker: the page never waits for the solver. */
import type { Bank } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import type { PlanWishes, Recall } from '../../../shared/memory.ts';
import type { Problem } from '../../../shared/problem.ts';
import type { Answer, Asked, Mark, Question } from '../../../shared/question.ts';
import type { Act, Fault, Scenario } from '../../../shared/scenario.ts';
import type { Outcome } from '../../../shared/solution.ts';
import type { Theme, Width } from '../../drawing/index.ts';
import type { Given, Judged, Task } from '../../practice/index.ts';

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
}

export interface Sheet {
  readonly title: string;
  readonly svg: string;
  /** Pixels at which its lettering has its size. */
  readonly width: number;
  readonly height: number;
  readonly spots: readonly Spot[];
}

export interface Drawn {
  readonly sheets: readonly Sheet[];
}

/** One picture of a run, with what has just happened. */
export interface Frame {
  readonly caption: string;
  readonly drawn: Drawn;
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
  /** What the meter shows, where it is connected. */
  readonly meter: string | undefined;
}

export interface SkillProgress {
  readonly skill: string;
  readonly title: string;
  readonly topic: string;
  /** shut: what it stands on is not held yet. */
  readonly standing: 'held' | 'fading' | 'begun' | 'open' | 'shut';
  /** Chance of a right answer now, 0 to 1; 0 for what was never begun. */
  readonly chance: number;
  readonly due: number | null;
}

export interface Progress {
  readonly skills: readonly SkillProgress[];
  /** Towards the assessment: questions each day, and what will not be ready. */
  readonly plan:
    | {
        readonly days: readonly { readonly at: number; readonly questions: number }[];
        readonly notReady: readonly string[];
        readonly average: number;
      }
    | { readonly problem: string }
    | null;
}

/** Requests by name: what each takes and gives. */
export interface Requests {
  open: { take: { bank: Bank }; give: { skills: number } };
  next: {
    take: {
      recalls: readonly (readonly [string, Recall])[];
      at: number;
      seed: string;
      number: number;
      recent: readonly string[];
      seen: readonly string[];
      only?: string;
      view: View;
    };
    give: Prepared | { readonly nothing: string };
  };
  hint: { take: { task: Task }; give: string };
  ask: { take: { question: Question }; give: Asked };
  mark: { take: { question: Question; answer: Answer }; give: Mark };
  progress: {
    take: { recalls: readonly (readonly [string, Recall])[]; at: number; wishes: PlanWishes | null };
    give: Progress;
  };
  judge: {
    take: { task: Task; given: Given; recalls: readonly (readonly [string, Recall])[]; view: View };
    give: { readonly judged: Judged; readonly right: Answer; readonly frames: readonly Frame[] };
  };
  draw: {
    take: { circuit: Circuit; scenario: Scenario | null; view: View; letters?: 'old' | 'new' };
    give: Drawn;
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
      readonly problems: readonly Problem[];
      readonly findings: readonly Problem[];
      readonly circuit: Circuit | undefined;
    };
  };
}

export type RequestName = keyof Requests;

export interface Request<K extends RequestName = RequestName> {
  readonly number: number;
  readonly name: K;
  readonly take: Requests[K]['take'];
}

export type Reply =
  | { readonly number: number; readonly ok: true; readonly give: unknown }
  | { readonly number: number; readonly ok: false; readonly message: string };
