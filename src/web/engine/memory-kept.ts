import type { SkillAnswer } from '../../../shared/memory.ts';
import { mergeHistories, type Recalls, replay } from '../../memory/index.ts';

/** The answers that the engine was told of, and what follows from them: worked out again when it is wanted. */
export class MemoryKept {
  private answers: readonly SkillAnswer[] = [];
  private states: Recalls | undefined;
  private circuits: ReadonlySet<string> | undefined;

  /** Takes in more answers, in whatever order and however often they come. Returns how many there are. */
  add(more: readonly SkillAnswer[]): number {
    this.answers = mergeHistories([this.answers, more]);
    this.states = undefined;
    this.circuits = undefined;
    return this.answers.length;
  }

  get recalls(): Recalls {
    this.states ??= replay(this.answers);
    return this.states;
  }

  /** Circuits answered before. */
  get seen(): ReadonlySet<string> {
    this.circuits ??= new Set(this.answers.map(({ circuit }) => circuit));
    return this.circuits;
  }
}
