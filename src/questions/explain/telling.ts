/** Tells what a scenario does, sentence by sentence, from the solver's trace and nothing else; each relay once. */
import type { ExplanationStep } from '../../../shared/question.ts';
import type { LoadTrace } from '../../../shared/solution.ts';
import { actInWords } from '../../circuit/index.ts';
import { listed, sentence } from '../ask/situation.ts';
import { type History, isRelay, mechanismsOn, type Stage } from './history.ts';
import { type Why, whyMoved, whyRelay } from './relay-why.ts';
import { aboutHops, hopText } from './wording.ts';

/** One sentence, with the stage and the traces it was read from. */
export interface Sentence {
  readonly text: string;
  readonly about: readonly string[];
  readonly after: number;
  readonly traces: readonly LoadTrace[];
}

export class Telling {
  readonly history: History;
  readonly relevant: ReadonlySet<number>;
  readonly sentences: Sentence[] = [];
  /** What was last said of each relay. */
  private readonly told = new Map<number, string>();
  private readonly weldsTold = new Set<string>();
  private readonly wired: ReadonlySet<string>;

  constructor(history: History, relevant: ReadonlySet<number>) {
    this.history = history;
    this.relevant = relevant;
    this.wired = new Set(
      history.circuit.paths.flatMap(({ steps }) =>
        steps.flatMap(({ device, enter, leave }) => [
          `${device}:${enter}`,
          ...(leave === undefined ? [] : [`${device}:${leave}`]),
        ]),
      ),
    );
  }

  say(after: number, text: string, about: readonly string[], traces: readonly LoadTrace[] = []): void {
    const hops = traces.flatMap(({ path, stoppedBy }) => [...path, ...stoppedBy]);
    this.sentences.push({
      text: sentence(text),
      about: [...new Set([...about, ...aboutHops(hops)])],
      after,
      traces,
    });
  }

  steps(): ExplanationStep[] {
    return this.sentences.map(({ text, about }) => ({ text, about: [...about] }));
  }

  /** Contacts of a mechanism that wires come to on both sides and that have just become closed, or open. */
  private contacts(mechanism: number, after: number, closed: boolean): string[] {
    const { machine, stages } = this.history;
    const position = (mask: number): number => 31 - Math.clz32(mask);
    const now = position(stages[after]!.state.at[mechanism]!);
    const before = after === 0 ? 0 : position(stages[after - 1]!.state.at[mechanism]!);
    return machine.plan.switches.flatMap(({ mechanism: mine, device, from, to, closedIn, fixed }) => {
      if (mine !== mechanism || fixed || closedIn.includes(now) === closedIn.includes(before)) return [];
      if (!this.wired.has(`${device}:${from}`) || !this.wired.has(`${device}:${to}`)) return [];
      return closedIn.includes(now) === closed ? [hopText({ device, enter: from, leave: to })] : [];
    });
  }

  /** `It breaks -K1:11-12 and makes -K1:11-14.`; nothing where no contact of it is wired. */
  private contactsMoved(mechanism: number, after: number): string {
    const breaks = this.contacts(mechanism, after, false);
    const makes = this.contacts(mechanism, after, true);
    const parts = [
      ...(breaks.length > 0 ? [`breaks ${listed(breaks)}`] : []),
      ...(makes.length > 0 ? [`makes ${listed(makes)}`] : []),
    ];
    return parts.length === 0 ? '' : `. It ${parts.join(' and ')}`;
  }

  /** What an act itself moves: `-S1:13-14 makes`. */
  private acted(stage: Stage): string {
    const { machine } = this.history;
    const driven = (drive: string): number[] =>
      stage.moved.filter(
        (mechanism) =>
          machine.plan.mechanisms[mechanism]!.drive === drive && !stage.state.tripped.includes(mechanism),
      );
    const moved = driven('act');
    const feeds = driven('feed');
    const say = (list: readonly number[], closed: boolean, word: readonly [string, string]): string[] => {
      const contacts = list.flatMap((mechanism) => this.contacts(mechanism, stage.after, closed));
      return contacts.length === 0 ? [] : [`${listed(contacts)} ${word[contacts.length > 1 ? 1 : 0]}`];
    };
    return listed([
      ...say(moved, false, ['breaks', 'break']),
      ...say(moved, true, ['makes', 'make']),
      ...say(feeds, false, ['opens', 'open']),
      ...say(feeds, true, ['closes', 'close']),
    ]);
  }

  /** The start, or one act: what it does, and which relays follow. */
  stage(stage: Stage): void {
    const { after, act, moved } = stage;
    const relays = moved.filter(
      (mechanism) => isRelay(this.history, mechanism) && this.relevant.has(mechanism),
    );
    if (act) {
      const words = actInWords(act, this.history.circuit);
      const contacts = this.acted(stage);
      const about = 'device' in act ? [act.device] : [];
      const nothing = relays.length === 0 && moved.length === 0 ? ': nothing moves' : '';
      this.say(
        after,
        `${after}. ${sentence(words).slice(0, -1)}${contacts ? `: ${contacts}` : nothing}`,
        about,
      );
    }
    for (const mechanism of stage.state.tripped) {
      if (!moved.includes(mechanism)) continue;
      const { id, device } = this.history.machine.plan.mechanisms[mechanism]!;
      this.say(after, `${id} opens by itself: two poles of its supply are joined without a load`, [device]);
    }
    for (const mechanism of relays) this.relayMoved(mechanism, after);
  }

  private relayMoved(mechanism: number, after: number): void {
    const { machine, stages } = this.history;
    const { id, device } = machine.plan.mechanisms[mechanism]!;
    const operated = stages[after]!.state.at[mechanism] === 2;
    const why = whyMoved(this.history, after, mechanism);
    this.say(
      after,
      `${after === 0 ? 'at the start ' : ''}${id} ${operated ? 'operates' : 'releases'}: ${why.text}${this.contactsMoved(mechanism, after)}`,
      [device],
      why.traces,
    );
    this.told.set(mechanism, why.text);
    this.restBehind(why.traces, after);
  }

  /** Whether this has been said of a relay already. */
  wasTold(mechanism: number, why: Why): boolean {
    return this.told.get(mechanism) === why.text;
  }

  noteTold(mechanism: number, why: Why): void {
    this.told.set(mechanism, why.text);
  }

  /** Contacts on a path that are closed only because they are welded. */
  private welds({ path }: LoadTrace, after: number): void {
    for (const hop of path) {
      const welded = this.history.machine.plan.switches.some(
        ({ device, from, to, fixed }) =>
          fixed === 'closed' &&
          device === hop.device &&
          [from, to].includes(hop.enter) &&
          [from, to].includes(hop.leave ?? ''),
      );
      if (!welded || this.weldsTold.has(hopText(hop))) continue;
      this.weldsTold.add(hopText(hop));
      this.say(after, `${hopText(hop)} is welded and stays closed`, [hop.device]);
    }
  }

  /** Relays on these traces of which nothing has been said yet: why they are where they are. */
  restBehind(traces: readonly LoadTrace[], after: number): void {
    const { machine, stages } = this.history;
    for (const trace of traces) {
      this.welds(trace, after);
      for (const mechanism of mechanismsOn(this.history, trace)) {
        if (!isRelay(this.history, mechanism) || this.told.has(mechanism)) continue;
        const { id, device } = machine.plan.mechanisms[mechanism]!;
        const why = whyRelay(this.history, after, mechanism);
        const operated = stages[after]!.state.at[mechanism] === 2;
        this.told.set(mechanism, why.text);
        this.say(
          after,
          `${id} ${operated ? 'has operated' : 'is at rest'}: ${why.text}`,
          [device],
          why.traces,
        );
        this.restBehind(why.traces, after);
      }
    }
  }
}
