/**
 * What decides, held against the solver's state and against a network solved another way: what is said to be open is open and
 * keeps the current away whatever else were closed; what is said to feed something conducts from pole to pole.
 */
import { describe, expect, it } from 'vitest';
import type { Question, QuestionKind } from '../../shared/question.ts';
import { randomOf } from '../../src/generator/index.ts';
import { entriesOf } from '../../src/questions/entries.ts';
import { type History, historyOf } from '../../src/questions/explain/history.ts';
import { loadsOf } from '../../src/questions/explain/standing.ts';
import { explain } from '../../src/questions/index.ts';
import type { ExplanationStep } from '../../src/questions/said.ts';
import { advance, copyState, isClosed, type Machine, type State } from '../../src/solver/index.ts';
import type { ExplainingSaid, Feed, Hop, PlaceSaid } from '../../src/words/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { nodeVolts } from '../support/naive-network.ts';
import type { Wiring } from '../support/wiring.ts';
import { freshQuestions } from './fresh.ts';

const COUNT = drawn(80);

/** Everything in a statement that looks so, however deep. */
function within<T>(value: unknown, is: (value: object) => boolean): T[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap((each) => within<T>(each, is));
  return is(value) ? [value as T, ...inside] : inside;
}

const feedsIn = (said: ExplainingSaid): Feed[] =>
  within(said, (value) => 'through' in value && 'back' in value);
const openIn = (said: ExplainingSaid): Hop[] =>
  within<PlaceSaid>(said, (value) => 'says' in value && 'contact' in value).flatMap((place) =>
    'contact' in place && !place.says.startsWith('closed') ? [place.contact] : [],
  );

const partOf = ({ plan }: Machine, { device, enter, leave }: Hop): number =>
  plan.switches.findIndex(
    (part) =>
      part.device === device &&
      ((part.from === enter && part.to === leave) || (part.from === leave && part.to === enter)),
  );

/** What keeps a way from being one, in a state. */
function faultsOf({ machine, circuit }: History, item: string, feed: Feed, state: State): string[] {
  const { plan } = machine;
  const faults: string[] = [];
  const nodeOf = (terminal: string): number => plan.nodeOf.get(terminal) ?? -1;
  // A short-circuited load is no load any more.
  const joined = (one: number, other: number): boolean =>
    one === other || plan.joins.some((pair) => pair.includes(one) && pair.includes(other));
  const [from, to] = [feed.from, feed.to].map((pole) => pole.split(':')[0]!);
  if (from !== to) faults.push(`${feed.from} and ${feed.to} are poles of two supplies`);
  const gone = (start: string, hops: readonly Hop[]): number => {
    let at = nodeOf(start);
    for (const hop of hops) {
      if (circuit.supplies.some(({ name }) => name === hop.device))
        faults.push(`through supply ${hop.device}`);
      const enter = nodeOf(`${hop.device}:${hop.enter}`);
      if (!joined(at, enter)) faults.push(`no conductor to ${hop.device}:${hop.enter}`);
      if (hop.leave === undefined) {
        at = enter;
        continue;
      }
      const part = partOf(machine, hop);
      const load = plan.loads.some(
        ({ device, from }) => device === hop.device && [hop.enter, hop.leave].includes(from),
      );
      if (part < 0 && !load) faults.push(`nothing between ${hop.device}:${hop.enter} and ${hop.leave}`);
      if (part >= 0 && !isClosed(machine, state.at, part))
        faults.push(`${hop.device}:${hop.enter}-${hop.leave} is open`);
      at = nodeOf(`${hop.device}:${hop.leave}`);
    }
    return at;
  };
  const hopsOf = (parts: Feed['through']): Hop[] => parts.flatMap(({ hops }) => hops);
  const high = gone(feed.from, hopsOf(feed.through));
  const turned = hopsOf(feed.back)
    .reverse()
    .map(
      ({ device, enter, leave }): Hop =>
        leave === undefined ? { device, enter } : { device, enter: leave, leave: enter },
    );
  const low = gone(feed.to, turned);
  const device = item.split(':')[0]!;
  const ends = plan.loads.filter((load) => load.device === device).flatMap(({ a, b }) => [a, b]);
  for (const end of [high, low])
    if (!ends.some((node) => joined(node, end))) faults.push(`doesn't come to ${item}`);
  return faults;
}

/** Volts of a load in a network in which every contact is closed but some. */
function voltsWithout({ plan }: Machine, state: State, open: ReadonlySet<number>, load: number): number {
  const random = randomOf(`${load}`);
  const node = String;
  const wiring: Wiring = {
    terminals: Array.from({ length: plan.nodes }, (_, index) => node(index)),
    joined: plan.joins.map(([one, other]) => [node(one), node(other)] as const),
    resistors: [
      ...plan.switches.flatMap(({ a, b }, index) =>
        open.has(index)
          ? []
          : [{ name: '', from: node(a), to: node(b), ohms: 0.01 + random.int(1, 1000) / 1000 }],
      ),
      ...plan.loads.flatMap(({ a, b, siemens }) =>
        siemens === 0 ? [] : [{ name: '', from: node(a), to: node(b), ohms: 1 / siemens }],
      ),
    ],
    sources: plan.supplies.flatMap(({ name, poles }, index) =>
      state.supplyOn[index]
        ? poles.slice(0, -1).map(({ node: plus, direct, re, im }) => ({
            supply: name,
            plus: node(plus),
            minus: node(poles.at(-1)!.node),
            direct,
            re,
            im,
          }))
        : [],
    ),
    earths: plan.supplies.filter(({ earthed }) => earthed).map(({ poles }) => node(poles.at(-1)!.node)),
  };
  const { a, b } = plan.loads[load]!;
  return Math.hypot(
    ...(['direct', 're', 'im'] as const).map((part) => {
      const volts = nodeVolts(wiring, part);
      return volts.get(node(a))! - volts.get(node(b))!;
    }),
  );
}

/** The states that follow one another while a flasher runs. */
function phasesOf(machine: Machine, from: State): State[] {
  const state = copyState(from);
  return Array.from({ length: 8 }, () => {
    const phase = copyState(state);
    const due = Math.min(...state.due);
    if (due !== Infinity) advance(machine, state, due - state.now);
    return phase;
  });
}

/** Loads that are said to be stopped: a coil where a relay is told of. */
function stoppedLoads(history: History, said: ExplainingSaid): string[] {
  if (said.says !== 'stands' || !('item' in said)) return [];
  const { why, item } = said;
  const [reason] = [why, ...('why' in why ? [why.why] : [])].slice(-1);
  return reason?.says === 'stopped'
    ? loadsOf(history, item).slice(0, why.says === 'notSet' ? 1 : undefined)
    : [];
}

interface Counted {
  ways: number;
  stops: number;
  cuts: number;
}

/** Holds one step against the state that it is told of. */
function hold(
  history: History,
  { said }: ExplanationStep,
  after: number,
  about: string,
  counted: Counted,
): void {
  const { machine, stages } = history;
  const { state } = stages[after]!;
  const text = `${about}: ${JSON.stringify(said)}`;
  const restless = said.says === 'flashes' || said.says === 'neverFed';
  const moments = restless ? phasesOf(machine, state) : [state];
  const item = 'item' in said ? said.item : '';
  for (const feed of feedsIn(said)) {
    counted.ways++;
    expect(
      moments.map((moment) => faultsOf(history, item, feed, moment)),
      text,
    ).toContainEqual([]);
  }
  for (const contact of openIn(said)) {
    counted.stops++;
    const part = partOf(machine, contact);
    expect(part, text).toBeGreaterThanOrEqual(0);
    expect(
      moments.some((moment) => !isClosed(machine, moment.at, part)),
      text,
    ).toBe(true);
  }
  if (restless) return;
  for (const load of stoppedLoads(history, said)) {
    const trace = history.trace(after, load);
    // Of a motor's windings one is told of; a supply that is off is no contact.
    if (!trace || trace.fed || trace.stoppedBy.length === 0) continue;
    const named = new Set(trace.stoppedBy.map((blocker) => partOf(machine, blocker)));
    if (named.has(-1)) continue;
    counted.cuts++;
    for (const contact of openIn(said))
      if (loadsOf(history, item).length === 1) expect(named, text).toContain(partOf(machine, contact));
    const index = machine.plan.loads.findIndex(({ id }) => id === load);
    expect(voltsWithout(machine, state, named, index), text).toBeLessThan(
      1e-4 * machine.plan.loads[index]!.volts,
    );
  }
}

const KINDS = ['lamp-states', 'input-states', 'relay-states', 'sequence'] as const;

describe('what decides', () => {
  it.each(KINDS)(
    'is so in the state asked about: %s',
    (kind: Extract<QuestionKind, (typeof KINDS)[number]>) => {
      const counted: Counted = { ways: 0, stops: 0, cuts: 0 };
      for (const question of freshQuestions(kind, COUNT) as Extract<Question, { kind: typeof kind }>[]) {
        const about = `${question.family}, seed "${question.seed}"`;
        const history = historyOf(question.circuit, question.scenario);
        const { decides } = explain(question);
        for (const { key, after, item } of entriesOf(question)) {
          const decision = decides.find((each) => each.item === key)!;
          expect(JSON.stringify(decision.said), about).toContain(item);
          for (const step of [decision, ...decision.behind]) hold(history, step, after, about, counted);
          hold(history, { ...decision, said: decision.brief }, after, about, counted);
        }
      }
      expect(counted.ways).toBeGreaterThan(atLeast(COUNT / 2));
      expect(counted.stops).toBeGreaterThan(atLeast(COUNT / 2));
      expect(counted.cuts).toBeGreaterThan(atLeast(COUNT / 4));
    },
  );
});
