/** Circuits of papers that somebody can still work on: they are marked nowhere else for that learner. */
import type { TriedPlace } from '../../../shared/homework.ts';
import { guardedCircuits, phaseOf } from '../../homework/index.ts';
import type { KeptSet, PaperHead, Store } from '../../store/index.ts';
import { others } from '../turns.ts';

/** Papers whose circuits are remembered, so that they aren't worked out for each answer. A paper never changes. */
const MOST_REMEMBERED = 2000;

export interface GuardedPaper {
  readonly paper: PaperHead;
  readonly kept: KeptSet;
  /** With the index of the item that each belongs to. */
  readonly circuits: ReadonlyMap<string, number>;
}

/** One circuit of one paper. */
export interface Touched {
  readonly paper: GuardedPaper;
  readonly circuit: string;
}

export class Guard {
  private readonly store: Store;
  private readonly now: () => number;
  private readonly remembered = new Map<string, ReadonlyMap<string, number>>();

  constructor(store: Store, now: () => number) {
    this.store = store;
    this.now = now;
  }

  /** A learner's papers that can be worked on, or will be; those only made too, for they may have been printed. */
  async papersOf(learner: string): Promise<readonly GuardedPaper[]> {
    const { homework, people } = this.store;
    const at = this.now();
    const found: GuardedPaper[] = [];
    for (const { paper, kept } of await homework.unsubmittedOf(learner)) {
      if (phaseOf(kept.set, at) === 'closed') continue;
      if ((await people.classes.mannerOf(kept.class, learner)) !== 'learner') continue;
      found.push({ paper, kept, circuits: await this.circuitsOn(paper.id) });
    }
    return found;
  }

  private async circuitsOn(id: string): Promise<ReadonlyMap<string, number>> {
    const known = this.remembered.get(id);
    if (known) return known;
    const whole = await this.store.homework.paper(id);
    const circuits = whole ? guardedCircuits(whole.paper) : new Map<string, number>();
    await others();
    const [oldest] = this.remembered.keys();
    if (oldest !== undefined && this.remembered.size >= MOST_REMEMBERED) this.remembered.delete(oldest);
    this.remembered.set(id, circuits);
    return circuits;
  }

  /** Notes for the tutor that a circuit was to be marked or run elsewhere. */
  async tried({ paper: { paper, circuits }, circuit }: Touched, place: TriedPlace): Promise<void> {
    const item = circuits.get(circuit);
    if (item !== undefined) await this.store.homework.triedElsewhere(paper.id, item, place);
  }
}
