/** One practice: the question that is open, what has been answered to it, and the one being made ready behind it. */
import { signal } from '@preact/signals';
import { nanoid } from 'nanoid';
import type { BankSkill } from '../../../../shared/bank.ts';
import type { Answer } from '../../../../shared/question.ts';
import type { Given, Task } from '../../../practice/index.ts';
import { NotTold } from '../../engine/client.ts';
import type { Frame, Prepared, Requests, View } from '../../engine/messages.ts';
import { settings } from '../../learner.ts';
import type { OpenQuestion, PlacedAnswer } from '../../local/database.ts';
import { tellNewer } from '../../renewed.ts';
import type { Ground } from '../../start.ts';
import { lastCircuit } from '../../try-circuit.ts';
import { wishesOf } from '../../wishes.ts';
import { words } from '../../words.ts';

export type Judgement = Requests['judge']['give'];

export type Phase =
  | { readonly kind: 'preparing' }
  | { readonly kind: 'nothing'; readonly why: string }
  /** `onPaper`: the circuit is on an open paper, and there is nothing to try again. */
  | { readonly kind: 'failed'; readonly why: string; readonly onPaper?: boolean }
  /** What a placement found: what is known, and of how many. */
  | { readonly kind: 'placed'; readonly known: readonly BankSkill[]; readonly of: number }
  | {
      readonly kind: 'asking';
      readonly prepared: Prepared;
      readonly hint: string | undefined;
      /** The answer as it was given, where it could not be kept, and why: it is what is tried again. */
      readonly unkept?: { readonly given: Given; readonly why: string };
    }
  | {
      readonly kind: 'marked';
      readonly prepared: Prepared;
      readonly given: Given;
      readonly judgement: Judgement;
      /** The run, once it has been worked out. */
      readonly frames: readonly Frame[] | undefined;
    };

type Made = Requests['next']['give'];

/** Small enough that a picture of the time in between stays true. */
const PREFETCH_TRUE_FOR = 10 * 60_000;

export class Session {
  readonly phase = signal<Phase>({ kind: 'preparing' });
  /** By item: the state chosen, or for a meter the text typed under `volts`. */
  readonly chosen = signal<ReadonlyMap<string, string>>(new Map());
  readonly number = signal(0);
  /** The answers of a placement under way. */
  readonly placing = signal<readonly PlacedAnswer[] | null>(null);
  /** The one skill that is wanted, as a link to it asked for; null is practice by the memory. */
  readonly only = signal<string | null>(null);
  private readonly ground: Ground;
  private readonly view: () => View;
  private readonly seed = nanoid(10);
  /** Questions put since the page was opened, one that a reload brought back among them. */
  put = 0;
  private recent: readonly string[] = [];
  private shownAt = 0;
  /** Seconds used before a reload. */
  private before = 0;
  private ready: { readonly at: number; readonly made: Promise<Made | 'found'> } | undefined;

  constructor(ground: Ground, view: () => View) {
    this.ground = ground;
    this.view = view;
  }

  /** The question that was open when the page was last left, or the first one. */
  async begin(): Promise<void> {
    const { local } = this.ground;
    // Where the device's store says nothing, it begins as on a first visit; what is answered says so.
    this.placing.value = (await local.value('placing').catch(() => null)) ?? null;
    const open = await local.value('open').catch(() => undefined);
    const { value: only } = this.only;
    if (!open || (only !== null && open.task.skill !== only) || !(await this.resume(open))) await this.next();
  }

  /** From the next question on only this skill; that one comes at once where another is open. Null ends it. */
  async keepTo(skill: string | null): Promise<void> {
    if (skill === this.only.value) return;
    this.only.value = skill;
    this.ready = undefined;
    const phase = this.phase.value;
    // An answer that is still to be kept is not left behind.
    if (phase.kind === 'asking' && phase.unkept) return;
    const open = phase.kind === 'asking' ? phase.prepared.task.skill : undefined;
    // Before the first question begin() sees to it.
    if (skill !== null && phase.kind !== 'preparing' && open !== skill) await this.next();
  }

  private async resume(open: OpenQuestion): Promise<boolean> {
    try {
      const prepared = await this.ground.engine.call('show', { task: open.task, view: this.view() });
      this.recent = open.recent;
      this.number.value = open.number;
      this.put = 1;
      this.chosen.value = new Map(open.chosen);
      this.before = open.secondsUsed;
      this.shownAt = performance.now();
      const hint = open.hinted ? await this.ground.engine.call('hint', { task: open.task }) : undefined;
      const phase = { kind: 'asking', prepared, hint } as const;
      if (open.given) await this.judge(phase, open.given);
      else this.phase.value = phase;
      return true;
    } catch {
      // Made by another version of the page: a fresh question instead.
      return false;
    }
  }

  private keepOpen(given?: Given): Promise<void> {
    const phase = this.phase.value;
    if (phase.kind !== 'asking') return Promise.resolve();
    return this.ground.local.setValue('open', {
      task: phase.prepared.task,
      number: this.number.value,
      recent: this.recent,
      chosen: [...this.chosen.value],
      hinted: phase.hint !== undefined,
      secondsUsed: this.secondsUsed(),
      ...(given ? { given } : {}),
    });
  }

  private secondsUsed(): number {
    return this.before + (performance.now() - this.shownAt) / 1000;
  }

  private async make(): Promise<Made | 'found'> {
    const { engine, supply } = this.ground;
    const placing = this.placing.value;
    const asked = placing && (await engine.call('placing', { answers: placing }));
    if (asked?.kind === 'found') return 'found';
    const at = Date.now();
    const { placement, newSkillsADay: newADay } = settings.value;
    const wishes = wishesOf(settings.value);
    // Where it can't be worked out, practice goes on without a plan.
    const planned =
      wishes && !asked
        ? await engine.call('planned', { at, wishes, placement, newADay }).catch(() => null)
        : null;
    return engine.call('next', {
      at,
      seed: this.seed,
      number: this.number.value,
      recent: this.recent,
      placement,
      newADay,
      ...(supply ? { issued: supply.there } : {}),
      ...(planned ? { planned } : {}),
      ...(asked ? { only: asked.skill } : this.only.value !== null ? { only: this.only.value } : {}),
      view: this.view(),
    });
  }

  /** Puts the next question; at once when it has been made ready. */
  async next(): Promise<void> {
    tellNewer();
    const { ready } = this;
    this.ready = undefined;
    const usable = ready && Date.now() - ready.at < PREFETCH_TRUE_FOR;
    if (!usable) this.phase.value = { kind: 'preparing' };
    try {
      const made = await (usable ? ready.made : this.make());
      if (made === 'found') {
        await this.finishPlacing();
        return;
      }
      if ('nothing' in made) {
        this.phase.value = {
          kind: 'nothing',
          why:
            settings.value.newSkillsADay === 0
              ? `${made.nothing} ${words('first').practise.noneNewIsSet}`
              : made.nothing,
        };
        return;
      }
      this.chosen.value = new Map();
      this.number.value += 1;
      this.put += 1;
      this.before = 0;
      this.shownAt = performance.now();
      this.phase.value = { kind: 'asking', prepared: made, hint: undefined };
      // The question can be answered without: only a reload would not bring it back.
      await this.keepOpen().catch(() => undefined);
      await this.tellSupply(made.task).catch(() => undefined);
    } catch (error) {
      this.phase.value = { kind: 'failed', why: error instanceof Error ? error.message : String(error) };
    }
  }

  /** An issued question is put once; where few are left of its skill, more are asked for. */
  private async tellSupply({ skill, issued }: Task): Promise<void> {
    const { supply } = this.ground;
    if (issued !== undefined) await supply?.put(issued);
    if (supply?.isLow(skill)) supply.soon();
  }

  /** Leaves the question that is open and looks for where to begin. */
  async startPlacing(): Promise<void> {
    this.phase.value = { kind: 'preparing' };
    await this.setPlacing([]);
    this.ready = undefined;
    await this.next();
  }

  /** Ends a placement: what was found so far holds. */
  async finishPlacing(): Promise<void> {
    const { engine, learner, bank } = this.ground;
    const found = await engine.call('placing', { answers: this.placing.value ?? [], most: 0 });
    const known = found.kind === 'found' ? found.known : [];
    await learner.change({ placement: { at: Date.now(), known: [...known] } });
    await this.setPlacing(null);
    this.ready = undefined;
    const skills = bank.topics.flatMap(({ skills: all }) => all);
    this.phase.value = {
      kind: 'placed',
      known: skills.filter(({ id }) => known.includes(id)),
      of: skills.length,
    };
    await this.ground.local.remove('open');
  }

  private async setPlacing(list: readonly PlacedAnswer[] | null): Promise<void> {
    this.placing.value = list;
    await this.ground.local.setValue('placing', list);
  }

  choose(item: string, state: string): void {
    this.chooseAll([[item, state]]);
  }

  chooseAll(states: readonly (readonly [string, string])[]): void {
    const phase = this.phase.value;
    // What is being kept stays as it was given.
    if (phase.kind === 'asking' && phase.unkept) return;
    this.chosen.value = new Map([...this.chosen.value, ...states]);
    this.keepOpen().catch(() => undefined);
  }

  async hint(): Promise<void> {
    const phase = this.phase.value;
    if (phase.kind !== 'asking') return;
    const hint = await this.ground.engine.call('hint', { task: phase.prepared.task });
    if (this.phase.value !== phase) return;
    this.phase.value = { ...phase, hint };
    await this.keepOpen().catch(() => undefined);
  }

  /** Marks what has been answered, keeps it, and makes the next question ready while the mark is read. */
  async check(answer: Answer): Promise<void> {
    const phase = this.phase.value;
    if (phase.kind !== 'asking') return;
    const given: Given = phase.unkept?.given ?? {
      id: nanoid(),
      learner: this.ground.learner.id,
      at: Date.now(),
      answer,
      help: { hint: phase.hint !== undefined, explanation: false },
      secondsUsed: this.secondsUsed(),
    };
    // From here on a reload brings the mark, with the same id: the answer counts, and once.
    try {
      await this.keepOpen(given);
      await this.judge(phase, given);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      // Nothing goes from the screen: the question, what was chosen, and the answer with its id.
      this.phase.value =
        error instanceof NotTold
          ? { kind: 'failed', why, onPaper: true }
          : { ...phase, unkept: { given, why } };
    }
  }

  /** Marks an answer, in the light of those before it; where they can't be had, by itself. */
  private async marked(task: Task, given: Given, view: View): Promise<Judgement> {
    const { engine, local } = this.ground;
    const earlier = await import('../../local/earlier.ts')
      .then(({ latestAnswers }) => latestAnswers(local))
      .catch(() => []);
    return engine.call('judge', { task, given, earlier, view });
  }

  private async judge(phase: Extract<Phase, { kind: 'asking' }>, given: Given): Promise<void> {
    const { learner } = this.ground;
    const { prepared } = phase;
    const { task } = prepared;
    const view = this.view();
    const judgement = await this.marked(task, given, view);
    // Kept before it is shown: a mark that has been seen is never lost.
    await learner.keep(judgement.judged.record);
    const placing = this.placing.value;
    if (placing && !placing.some(({ id }) => id === given.id))
      await this.setPlacing([
        ...placing,
        { id: given.id, skill: task.skill, right: judgement.mark.correct && !given.help.hint },
      ]);
    this.recent = [...this.recent, task.skill];
    lastCircuit.value = judgement.circuit;
    this.showMarked({ kind: 'marked', prepared, given, judgement, frames: undefined }, view);
    this.makeReady();
  }

  private makeReady(): void {
    const made = this.make();
    made.catch(() => undefined);
    this.ready = { at: Date.now(), made };
  }

  /** Shows a mark, and the run under it as soon as it has been worked out. */
  private showMarked(marked: Extract<Phase, { kind: 'marked' }>, view: View): void {
    this.phase.value = marked;
    const items = marked.judgement.mark.parts.map(({ item }) => item);
    this.ground.engine.call('run', { question: marked.prepared.task.question, items, view }).then(
      ({ frames }) => {
        if (this.phase.value === marked) this.phase.value = { ...marked, frames };
      },
      // The mark stands without the run.
      () => undefined,
    );
  }

  /** Draws anew what stands there and what was made ready: the theme or the width has changed. */
  async redraw(): Promise<void> {
    const { engine } = this.ground;
    const view = this.view();
    const before = this.phase.value;
    if (before.kind !== 'asking' && before.kind !== 'marked') return;
    const { task } = before.prepared;
    const prepared = await engine.call('show', { task, view });
    const now = this.phase.value;
    if ((now.kind !== 'asking' && now.kind !== 'marked') || now.prepared !== before.prepared) return;
    if (now.kind === 'asking') {
      this.phase.value = { ...now, prepared };
      return;
    }
    const judgement = await this.marked(task, now.given, view);
    if (this.phase.value.kind !== 'marked' || this.phase.value.prepared !== now.prepared) return;
    this.showMarked({ ...now, prepared, judgement, frames: undefined }, view);
    this.makeReady();
  }
}
