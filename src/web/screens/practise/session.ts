/** One practice: the question that is open, what has been answered to it, and the one being made ready behind it. */
import { signal } from '@preact/signals';
import { nanoid } from 'nanoid';
import type { Answer } from '../../../../shared/question.ts';
import type { Prepared, Requests, View } from '../../engine/messages.ts';
import { recalls, seenCircuits } from '../../learner.ts';
import type { Ground } from '../../start.ts';
import { lastCircuit } from '../../try-circuit.ts';

export type Judgement = Requests['judge']['give'];

export type Phase =
  | { readonly kind: 'preparing' }
  | { readonly kind: 'nothing'; readonly why: string }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'asking'; readonly prepared: Prepared; readonly hint: string | undefined }
  | { readonly kind: 'marked'; readonly prepared: Prepared; readonly judgement: Judgement };

/** Small enough that a picture of the time in between stays true. */
const PREFETCH_TRUE_FOR = 10 * 60_000;

export class Session {
  readonly phase = signal<Phase>({ kind: 'preparing' });
  /** By item: the state chosen, or for a meter the text typed under `volts`. */
  readonly chosen = signal<ReadonlyMap<string, string>>(new Map());
  readonly number = signal(0);
  private readonly ground: Ground;
  private readonly view: () => View;
  private readonly seed = nanoid(10);
  private readonly recent: string[] = [];
  private shownAt = 0;
  private ready:
    | { at: number; after: string | undefined; prepared: Promise<Requests['next']['give']> }
    | undefined;

  constructor(ground: Ground, view: () => View) {
    this.ground = ground;
    this.view = view;
  }

  private make(number: number, recent: readonly string[]): Promise<Requests['next']['give']> {
    return this.ground.engine.call('next', {
      recalls: [...recalls.value],
      at: Date.now(),
      seed: this.seed,
      number,
      recent,
      seen: seenCircuits.value,
      view: this.view(),
    });
  }

  /** Puts the next question; at once when it has been made ready. */
  async next(): Promise<void> {
    const last = this.recent.at(-1);
    const { ready } = this;
    this.ready = undefined;
    const usable = ready && ready.after === last && Date.now() - ready.at < PREFETCH_TRUE_FOR;
    if (!usable) this.phase.value = { kind: 'preparing' };
    try {
      const made = await (usable ? ready.prepared : this.make(this.number.value, this.recent));
      if ('nothing' in made) {
        this.phase.value = { kind: 'nothing', why: made.nothing };
        return;
      }
      this.chosen.value = new Map();
      this.number.value += 1;
      this.shownAt = performance.now();
      this.phase.value = { kind: 'asking', prepared: made, hint: undefined };
    } catch (error) {
      this.phase.value = { kind: 'failed', why: error instanceof Error ? error.message : String(error) };
    }
  }

  choose(item: string, state: string): void {
    this.chosen.value = new Map([...this.chosen.value, [item, state]]);
  }

  /** The next of an item's possible states, as touching it on the drawing gives. */
  turn(item: string, choices: readonly string[]): void {
    const now = this.chosen.value.get(item);
    const next = choices[now === undefined ? 0 : (choices.indexOf(now) + 1) % choices.length];
    if (next !== undefined) this.choose(item, next);
  }

  async hint(): Promise<void> {
    const phase = this.phase.value;
    if (phase.kind !== 'asking') return;
    const hint = await this.ground.engine.call('hint', { task: phase.prepared.task });
    if (this.phase.value === phase) this.phase.value = { ...phase, hint };
  }

  /** Marks what has been answered, keeps it, and makes the next question ready while the mark is read. */
  async check(answer: Answer): Promise<void> {
    const phase = this.phase.value;
    if (phase.kind !== 'asking') return;
    const { prepared } = phase;
    const judgement = await this.ground.engine.call('judge', {
      task: prepared.task,
      given: {
        id: nanoid(),
        learner: 'me',
        at: Date.now(),
        answer,
        help: { hint: phase.hint !== undefined, explanation: false },
        secondsUsed: (performance.now() - this.shownAt) / 1000,
      },
      recalls: [...recalls.value],
      view: this.view(),
    });
    // Kept before it is shown: a mark that has been seen is never lost.
    await this.ground.learner.keep(judgement.judged.record);
    this.recent.push(prepared.task.skill);
    lastCircuit.value = prepared.task.question.circuit;
    this.phase.value = { kind: 'marked', prepared, judgement };
    const made = this.make(this.number.value, this.recent);
    made.catch(() => undefined);
    this.ready = { at: Date.now(), after: prepared.task.skill, prepared: made };
  }
}
