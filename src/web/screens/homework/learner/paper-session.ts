/** One paper being worked on: what stands chosen, what has been saved, and how long was spent on each item. */
import { computed, type Signal, signal } from '@preact/signals';
import { nanoid } from 'nanoid';
import type { PaperView } from '../../../../../shared/homework-views.ts';
import type { Asked, PublicQuestion } from '../../../../../shared/question.ts';
import type { RefusedAnswer } from '../../../local/homework/kept-homework.ts';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { answeredOf, answerSoFar, type Chosen, chosenOf } from '../../../question/answer.ts';

export interface PaperItem {
  readonly question: PublicQuestion;
  readonly asked: Asked;
  readonly marks: number;
}

const NOTHING: Chosen = new Map();

export class PaperSession {
  readonly id: string;
  readonly view: Signal<PaperView>;
  readonly items: readonly PaperItem[];
  /** By item. */
  readonly chosen = signal<ReadonlyMap<number, Chosen>>(new Map());
  readonly hints = signal<ReadonlyMap<number, string>>(new Map());
  readonly refused = signal<readonly RefusedAnswer[]>([]);
  /** By item: how much of it is answered. */
  readonly answered = computed(() =>
    this.items.map(({ asked }, item) => answeredOf(asked, this.chosen.value.get(item) ?? NOTHING)),
  );
  private readonly outbox: Outbox;
  private readonly seconds = new Map<number, number>();
  private shown: { readonly item: number; readonly at: number } | undefined;

  private constructor(outbox: Outbox, view: PaperView) {
    this.outbox = outbox;
    this.id = view.id;
    this.view = signal(view);
    this.items = view.paper.items.map(({ question, marks }) => ({
      question,
      asked: question.asked,
      marks,
    }));
  }

  /** With everything as it was left: what was saved, and over it what still waits on this device. */
  static async open(outbox: Outbox, view: PaperView): Promise<PaperSession> {
    const session = new PaperSession(outbox, view);
    const chosen = new Map<number, Chosen>();
    for (const { item, answer, secondsUsed } of view.saved) {
      const asked = session.items[item]?.asked;
      if (asked) chosen.set(item, chosenOf(asked, answer));
      session.seconds.set(item, Math.max(session.seconds.get(item) ?? 0, secondsUsed ?? 0));
    }
    for (const waiting of await outbox.kept.waitingOf(outbox.person)) {
      if (waiting.paper !== view.id) continue;
      chosen.set(waiting.item, new Map(waiting.chosen));
      session.seconds.set(waiting.item, waiting.secondsUsed);
    }
    session.chosen.value = chosen;
    session.hints.value = new Map(view.hints.map(({ item, text }) => [item, text]));
    session.refused.value = await outbox.kept.refusedOf(outbox.person, view.id);
    return session;
  }

  /** The item that is looked at now, or none: time is counted for it. */
  look(item: number | undefined): void {
    this.countTime();
    this.shown = item === undefined ? undefined : { item, at: performance.now() };
  }

  private countTime(): void {
    const { shown } = this;
    if (!shown) return;
    const now = performance.now();
    this.seconds.set(shown.item, (this.seconds.get(shown.item) ?? 0) + (now - shown.at) / 1000);
    this.shown = { ...shown, at: now };
  }

  chosenIn(item: number): Chosen {
    return this.chosen.value.get(item) ?? NOTHING;
  }

  /** Changes an answer and keeps it; it is on this device when this resolves. */
  async choose(item: number, states: readonly (readonly [string, string])[]): Promise<void> {
    const wanted = this.items[item];
    if (!wanted || !this.open()) return;
    const next = new Map([...this.chosenIn(item), ...states]);
    this.chosen.value = new Map([...this.chosen.value, [item, next]]);
    this.countTime();
    await this.outbox.give({
      paper: this.id,
      id: nanoid(),
      item,
      answer: answerSoFar(wanted.question.kind, wanted.asked, next),
      chosen: [...next],
      secondsUsed: Math.round(this.seconds.get(item) ?? 0),
    });
  }

  /** Whether answers are taken now, by the server's clock as far as it has been heard. */
  open(): boolean {
    const { submittedAt, paper, open } = this.view.value;
    return open && submittedAt === null && this.outbox.now() < paper.closesAt;
  }

  async lookForRefused(): Promise<void> {
    this.refused.value = await this.outbox.kept.refusedOf(this.outbox.person, this.id);
  }

  /** Takes over how the paper stands at the server. What is chosen here stays. */
  renew(view: PaperView): void {
    this.outbox.hear(view.now);
    this.view.value = view;
    this.keepView();
  }

  takeHint(item: number, text: string): void {
    this.hints.value = new Map([...this.hints.value, [item, text]]);
    const before = this.view.value;
    this.view.value = { ...before, hints: [...before.hints, { item, text }] };
    this.keepView();
  }

  handedIn(submittedAt: number): void {
    this.view.value = { ...this.view.value, submittedAt, open: false };
    this.keepView();
  }

  private keepView(): void {
    const { kept, person } = this.outbox;
    // What has been saved meanwhile stands in the view that is kept, so only the rest is put over it.
    const { submittedAt, open, hints } = this.view.value;
    kept
      .paper(person, this.id)
      .then((there) => kept.keepPaper(person, { ...(there ?? this.view.value), submittedAt, open, hints }))
      .catch(() => undefined);
  }
}
