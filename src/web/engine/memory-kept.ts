import type { Recall, SkillAnswer } from '../../../shared/memory.ts';
import { mergeHistories, type Recalls, replay } from '../../memory/index.ts';

/** An answer with the number under which the server has it; null where it hasn't arrived. */
export interface NumberedAnswer extends SkillAnswer {
  readonly number: number | null;
}

/** What follows from all answers up to number `last`. */
export interface StandingAhead {
  readonly last: number;
  readonly recalls: Readonly<Record<string, Recall>>;
}

/** In the order of arrival; what hasn't arrived comes last, in the order in which it was given. */
const byArrival = (one: NumberedAnswer, other: NumberedAnswer): number =>
  (one.number ?? Number.MAX_SAFE_INTEGER) - (other.number ?? Number.MAX_SAFE_INTEGER);

/** The answers that the engine was told of, and what follows from them: worked out again when it is wanted. */
export class MemoryKept {
  private readonly answers = new Map<string, NumberedAnswer>();
  private ahead: StandingAhead | null = null;
  private states: Recalls | undefined;
  private circuits: ReadonlySet<string> | undefined;

  /**
   * Takes in more answers, in whatever order and however often they come; what is told of one later holds. Returns how many
   * there are.
   *
   * @param ahead - where some of the answers are still on their way; null when all are here
   */
  add(more: readonly NumberedAnswer[], ahead?: StandingAhead | null): number {
    for (const answer of more) this.answers.set(answer.id, answer);
    if (ahead !== undefined) this.ahead = ahead;
    this.states = undefined;
    this.circuits = undefined;
    return this.answers.size;
  }

  /** Forgets every answer: the history that they are of is another one now. */
  forget(): void {
    this.answers.clear();
    this.add([], null);
  }

  get recalls(): Recalls {
    this.states ??= this.workedOut();
    return this.states;
  }

  /** As the server works it out: the same answers, at the moments at which they count, in the same order. */
  private workedOut(): Recalls {
    const all = [...this.answers.values()].sort(byArrival);
    const { ahead } = this;
    if (!ahead) return replay(mergeHistories([all]));
    const later = all.filter(({ number }) => number === null || number > ahead.last);
    return replay(mergeHistories([later]), new Map(Object.entries(ahead.recalls)));
  }

  /** Circuits answered before. */
  get seen(): ReadonlySet<string> {
    this.circuits ??= new Set([...this.answers.values()].map(({ circuit }) => circuit));
    return this.circuits;
  }
}
