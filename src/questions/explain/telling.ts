/** Tells what a scenario does, statement by statement, from the solver's trace and nothing else; each relay once. */
import type { Act } from '../../../shared/scenario.ts';
import type { LoadTrace } from '../../../shared/solution.ts';
import { actSaid } from '../../circuit/index.ts';
import type { ExplainingSaid, Hop } from '../../words/index.ts';
import type { ExplanationStep } from '../said.ts';
import { type History, isRelay, mechanismsOn, type Stage } from './history.ts';
import { type Why, whyMoved, whyRelay } from './relay-why.ts';
import { aboutHops, hopOf } from './wording.ts';

/** One statement, with the stage and the traces it was read from. */
export interface Sentence {
  readonly said: ExplainingSaid;
  readonly about: readonly string[];
  readonly after: number;
  readonly traces: readonly LoadTrace[];
}

/** The same text for the same statement. */
export const keyOf = (statement: object): string => JSON.stringify(statement);

/** Steps of an explanation are sentences without what they were read from. */
export const stepsOf = (sentences: readonly Sentence[]): ExplanationStep[] =>
  sentences.map(({ said, about }) => ({ said, about }));

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

  say(
    after: number,
    said: ExplainingSaid,
    about: readonly string[],
    traces: readonly LoadTrace[] = [],
  ): void {
    const hops = traces.flatMap(({ path, stoppedBy }) => [...path, ...stoppedBy]);
    this.sentences.push({
      said,
      about: [...new Set([...about, ...aboutHops(hops)])],
      after,
      traces,
    });
  }

  /** Contacts of a mechanism that wires come to on both sides and that have just become closed, or open. */
  private contacts(mechanism: number, after: number, closed: boolean): Hop[] {
    const { machine, stages } = this.history;
    const position = (mask: number): number => 31 - Math.clz32(mask);
    const now = position(stages[after]!.state.at[mechanism]!);
    const before = after === 0 ? 0 : position(stages[after - 1]!.state.at[mechanism]!);
    return machine.plan.switches.flatMap(({ mechanism: mine, device, from, to, closedIn, fixed }) => {
      if (mine !== mechanism || fixed || closedIn.includes(now) === closedIn.includes(before)) return [];
      if (!this.wired.has(`${device}:${from}`) || !this.wired.has(`${device}:${to}`)) return [];
      return closedIn.includes(now) === closed ? [hopOf({ device, enter: from, leave: to })] : [];
    });
  }

  /** Contacts of a mechanism that have just opened and closed; none where none of it is wired. */
  private contactsMoved(mechanisms: readonly number[], after: number): { breaks: Hop[]; makes: Hop[] } {
    const all = (closed: boolean): Hop[] =>
      mechanisms.flatMap((mechanism) => this.contacts(mechanism, after, closed));
    return { breaks: all(false), makes: all(true) };
  }

  /** An act, and what it moves by itself. */
  private acted({ after, act, moved, state }: Stage & { readonly act: Act }, relays: number): ExplainingSaid {
    const { machine, circuit } = this.history;
    const driven = (drive: string): number[] =>
      moved.filter(
        (mechanism) =>
          machine.plan.mechanisms[mechanism]!.drive === drive && !state.tripped.includes(mechanism),
      );
    const { breaks, makes } = this.contactsMoved(driven('act'), after);
    const { breaks: opens, makes: closes } = this.contactsMoved(driven('feed'), after);
    const said = { number: after, act: actSaid(act, circuit) };
    if (breaks.length + makes.length + opens.length + closes.length > 0)
      return { says: 'act', ...said, breaks, makes, opens, closes };
    return { says: relays === 0 && moved.length === 0 ? 'actMovesNothing' : 'actAlone', ...said };
  }

  /** The start, or one act: what it does, and which relays follow. */
  stage(stage: Stage): void {
    const { after, act, moved } = stage;
    const relays = moved.filter(
      (mechanism) => isRelay(this.history, mechanism) && this.relevant.has(mechanism),
    );
    if (act) {
      const about = 'device' in act ? [act.device] : [];
      this.say(after, this.acted({ ...stage, act }, relays.length), about);
    }
    for (const mechanism of stage.state.tripped) {
      if (!moved.includes(mechanism)) continue;
      const { id, device } = this.history.machine.plan.mechanisms[mechanism]!;
      this.say(after, { says: 'trips', device: id }, [device]);
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
      {
        says: operated ? 'operates' : 'releases',
        relay: id,
        atStart: after === 0,
        why: why.reason,
        ...this.contactsMoved([mechanism], after),
      },
      [device],
      why.traces,
    );
    this.told.set(mechanism, keyOf(why.reason));
    this.restBehind(why.traces, after);
  }

  /** Whether this has been said of a relay already. */
  wasTold(mechanism: number, why: Why): boolean {
    return this.told.get(mechanism) === keyOf(why.reason);
  }

  noteTold(mechanism: number, why: Why): void {
    this.told.set(mechanism, keyOf(why.reason));
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
      if (!welded || this.weldsTold.has(keyOf(hop))) continue;
      this.weldsTold.add(keyOf(hop));
      this.say(after, { says: 'welded', contact: hopOf(hop) }, [hop.device]);
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
        this.told.set(mechanism, keyOf(why.reason));
        this.say(
          after,
          { says: operated ? 'hasOperated' : 'isAtRest', item: id, why: why.reason },
          [device],
          why.traces,
        );
        this.restBehind(why.traces, after);
      }
    }
  }
}
