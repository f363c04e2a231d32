/** How one lamp, input or relay stands after so many acts, and why: in one statement, and in short. */
import type { LoadTrace } from '../../../shared/solution.ts';
import { advance, copyState, type State, traceLoad, voltsAcross } from '../../solver/index.ts';
import type { ExplainingSaid, Feed, Hop, ReasonSaid, StandingSaid, StateName } from '../../words/index.ts';
import { RESTLESS, stateOf } from '../items.ts';
import type { ExplanationStep } from '../said.ts';
import { feedOf } from './feed.ts';
import { coilsOf, type History } from './history.ts';
import { whyRelay } from './relay-why.ts';
import { stepOf } from './story.ts';
import { placeAlone, placesOpen, stopped } from './wording.ts';

/** What is told, and the moment where more than one is asked about. */
export interface Thing {
  readonly item: string;
  readonly after?: number;
}

export interface Stands extends ExplanationStep {
  /** With its reason. */
  readonly said: StandingSaid;
  /** For whoever had it right: what decides, without why. */
  readonly brief: ExplainingSaid;
  /** Traces it was read from. */
  readonly traces: readonly LoadTrace[];
}

/** Changes of a flasher looked through for one that feeds the load, and one that doesn't. */
const MOST_CHANGES = 32;

interface OnAndOff {
  readonly on?: readonly [LoadTrace, State];
  readonly off?: readonly [LoadTrace, State];
}

function onAndOff({ machine, stages }: History, after: number, load: string): OnAndOff {
  const state = copyState(stages[after]!.state);
  const found: { on?: [LoadTrace, State]; off?: [LoadTrace, State] } = {};
  for (let change = 0; change < MOST_CHANGES && !(found.on && found.off); change++) {
    const trace = traceLoad(machine, state, load)!;
    if (trace.fed) found.on ??= [trace, copyState(state)];
    else found.off ??= [trace, copyState(state)];
    const due = Math.min(...state.due);
    if (due === Infinity) break;
    advance(machine, state, due - state.now);
  }
  return found;
}

function flasherTimes({ machine }: History, id: string): { on: number; off: number }[] {
  const { drive, delays } = machine.plan.mechanisms.find((mechanism) => mechanism.id === id) ?? {};
  return drive === 'flasher' && delays ? [{ on: delays[0]!, off: delays[1]! }] : [];
}

/** Something that never rests: how it is fed, and what is open in between. */
function flashes(history: History, after: number, thing: Thing, load: string, state: StateName): Stands {
  const { on, off } = onAndOff(history, after, load);
  const devices = off ? [...new Set(off[0].stoppedBy.map(({ device }) => device))] : [];
  const flashing = {
    ...thing,
    ...(off ? { gap: placesOpen(history, off[0].stoppedBy, off[1]) } : {}),
    times: devices.flatMap((device) => flasherTimes(history, device)),
  };
  return {
    ...stepOf<StandingSaid>(
      on ? { says: 'flashes', ...flashing, feed: feedOf(history, ...on) } : { says: 'neverFed', ...flashing },
      [thing.item, ...devices],
    ),
    brief: { says: 'standsSo', ...thing, state: { says: state } },
    traces: [...(on ? [on[0]] : []), ...(off ? [off[0]] : [])],
  };
}

/** Contacts that decide that something is fed: those that something moves. */
const decides = ({ through, back }: Feed): Hop[] =>
  [...through, ...back].flatMap(({ hops, closed }) => (closed ? hops : []));

/** The same in short. */
function briefOf(thing: Thing, state: StateName, why: ReasonSaid): ExplainingSaid {
  const so = { ...thing, state: { says: state } };
  if (why.says === 'stopped')
    return { says: 'stands', ...so, why: { says: 'stopped', open: why.open.map(placeAlone) } };
  if (why.says !== 'fed' && why.says !== 'coilFed') return { says: 'standsSo', ...so };
  const contacts = decides(why.feed);
  return contacts.length > 0 ? { says: 'standsThrough', ...so, contacts } : { says: 'standsSo', ...so };
}

/** Ids of the loads behind an item: a motor has three windings. */
export const loadsOf = ({ machine }: History, item: string): string[] => {
  const own = machine.plan.loads.filter(({ id }) => id === item);
  return (own.length > 0 ? own : machine.plan.loads.filter(({ device }) => device === item)).map(
    ({ id }) => id,
  );
};

/** The winding that tells: one without current if there is any. */
function tellingLoad(history: History, item: string, after: number): string {
  const ids = loadsOf(history, item);
  return ids.find((id) => history.trace(after, id)?.fed === false) ?? ids[0]!;
}

/** States of what has its whole voltage. */
const WHOLE: ReadonlySet<StateName> = new Set<StateName>(['lit', 'on', '1']);

/** A lamp, another load, an input. */
export function loadStands(history: History, after: number, thing: Thing): Stands {
  const { item } = thing;
  const state = stateOf(history.standpoint(after), item);
  const load = tellingLoad(history, item, after);
  if (RESTLESS.has(state)) return flashes(history, after, thing, load, state);
  const trace = history.trace(after, load)!;
  const stage = history.stages[after]!;
  const index = history.machine.plan.loads.findIndex(({ id }) => id === load);
  const part = history.machine.plan.loads[index]!;
  const why: ReasonSaid = part.dead
    ? { says: 'burntThrough' }
    : trace.fed
      ? { says: 'fed', feed: feedOf(history, trace, stage.state) }
      : stopped(history, trace.stoppedBy, stage.state, history.besides(after, load));
  const said = { ...thing, state: { says: state }, why };
  return {
    ...stepOf<StandingSaid>(
      trace.fed && !part.dead && !WHOLE.has(state)
        ? { says: 'standsWithOnly', ...said, has: voltsAcross(stage.state, index), rated: part.volts }
        : { says: 'stands', ...said },
      [item],
      [trace],
    ),
    brief: briefOf(thing, state, why),
    traces: [trace],
  };
}

/** A relay, contactor or timer, by its coil. */
export function relayStands(history: History, after: number, thing: Thing): Stands {
  const { item } = thing;
  const state = stateOf(history.standpoint(after), item);
  const { plan, mechanismOf } = history.machine;
  const mechanism = mechanismOf.get(item)!;
  if (RESTLESS.has(state) && plan.mechanisms[mechanism]!.drive !== 'flasher')
    return flashes(history, after, thing, coilsOf(history, mechanism)[0]!, state);
  const { reason, traces } = whyRelay(history, after, mechanism);
  return {
    ...stepOf<StandingSaid>(
      { says: 'stands', ...thing, state: { says: state }, why: reason },
      [plan.mechanisms[mechanism]!.device],
      traces,
    ),
    brief: briefOf(thing, state, reason),
    traces,
  };
}
