import type { LoadTrace } from '../../../shared/solution.ts';
import { advance, copyState, type State, traceLoad, voltsAcross } from '../../solver/index.ts';
import type { HintSaid, ReasonSaid, StateName } from '../../words/index.ts';
import { type Entry, entriesOf, momentAt, type StatesQuestion } from '../entries.ts';
import { stateOf } from '../items.ts';
import type { ExplanationStep } from '../said.ts';
import { standpointOf } from '../solving.ts';
import { type History, historyOf, relevantTo } from './history.ts';
import { whyRelay } from './relay-why.ts';
import { type Sentence, stepsOf, Telling } from './telling.ts';
import { pathOf, placesOpen, stopped } from './wording.ts';

/** Ids of the loads behind an item: a motor has three windings. */
const loadsOf = ({ machine }: History, item: string): string[] => {
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

/** Changes of a flasher looked through for one that feeds the load, and one that doesn't. */
const MOST_CHANGES = 32;

function onAndOff(
  history: History,
  after: number,
  load: string,
): { on?: LoadTrace; off?: [LoadTrace, State] } {
  const { machine, stages } = history;
  const state = copyState(stages[after]!.state);
  const found: { on?: LoadTrace; off?: [LoadTrace, State] } = {};
  for (let change = 0; change < MOST_CHANGES && !(found.on && found.off); change++) {
    const trace = traceLoad(machine, state, load)!;
    if (trace.fed) found.on ??= trace;
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

/** A thing asked; with its moment where more comes, for a sequence asks for several. */
const thingOf = ({ stages }: History, { item, after }: Entry): { item: string; after?: number } =>
  after === stages.length - 1 ? { item } : { item, after };

function sayFlashing(telling: Telling, entry: Entry, load: string): void {
  const { history } = telling;
  const { item, after } = entry;
  const { on, off } = onAndOff(history, after, load);
  const devices = off ? [...new Set(off[0].stoppedBy.map(({ device }) => device))] : [];
  const flashing = {
    ...thingOf(history, entry),
    ...(off ? { gap: placesOpen(history, off[0].stoppedBy, off[1]) } : {}),
    times: devices.flatMap((device) => flasherTimes(history, device)),
  };
  telling.say(
    after,
    on ? { says: 'flashes', ...flashing, path: pathOf(history, on) } : { says: 'neverFed', ...flashing },
    [item, ...devices],
  );
}

/** One thing asked: its path, or what stops it. */
function sayLoad(telling: Telling, entry: Entry, says: StateName): void {
  const { history } = telling;
  const { item, after } = entry;
  const load = tellingLoad(history, item, after);
  if (says === 'flashing' || says === 'pulsing' || says === 'changing') {
    sayFlashing(telling, entry, load);
    return;
  }
  const trace = history.trace(after, load)!;
  const stage = history.stages[after]!;
  const index = history.machine.plan.loads.findIndex(({ id }) => id === load);
  const part = history.machine.plan.loads[index]!;
  const whole = says === 'lit' || says === 'on' || says === '1';
  const why: ReasonSaid = part.dead
    ? { says: 'burntThrough' }
    : trace.fed
      ? { says: 'fed', path: pathOf(history, trace) }
      : stopped(history, trace.stoppedBy, stage.state);
  const said = { ...thingOf(history, entry), state: { says }, why };
  telling.say(
    after,
    trace.fed && !whole
      ? { says: 'standsWithOnly', ...said, has: voltsAcross(stage.state, index), rated: part.volts }
      : { says: 'stands', ...said },
    [item],
    [trace],
  );
  telling.restBehind([trace], after);
}

function sayRelay(telling: Telling, entry: Entry, state: StateName): void {
  const { history } = telling;
  const { item, after } = entry;
  const mechanism = history.machine.mechanismOf.get(item)!;
  if (state === 'changing') {
    sayFlashing(telling, entry, item);
    return;
  }
  const why = whyRelay(history, after, mechanism);
  const operated = state === 'operated';
  const thing = thingOf(history, entry);
  if (telling.wasTold(mechanism, why)) {
    telling.say(
      after,
      { says: operated ? 'hasOperatedAsSaid' : 'isAtRestAsSaid', ...thing },
      [item],
      why.traces,
    );
    return;
  }
  telling.noteTold(mechanism, why);
  telling.say(
    after,
    { says: operated ? 'hasOperated' : 'isAtRest', ...thing, why: why.reason },
    [item],
    why.traces,
  );
  telling.restBehind(why.traces, after);
}

/** The sentences of an explanation with what they were read from; tests hold them against the solver. */
export function tellStates(question: StatesQuestion): { history: History; sentences: readonly Sentence[] } {
  const { circuit, scenario } = question;
  const entries = entriesOf(question);
  const last = Math.max(...entries.map(({ after }) => after));
  const acts = scenario.acts.slice(0, last);
  const history = historyOf(circuit, { ...scenario, acts });
  const asked = entries.flatMap(({ item, after }) => loadsOf(history, item).map((load) => ({ load, after })));
  const telling = new Telling(history, relevantTo(history, asked));
  for (const stage of history.stages) {
    telling.stage(stage);
    const standpoint = standpointOf(history.machine, stage.state);
    for (const entry of entries) {
      if (entry.after !== stage.after) continue;
      const state = stateOf(standpoint, entry.item);
      if (entry.kind === 'relay') sayRelay(telling, entry, state);
      else sayLoad(telling, entry, state);
    }
  }
  return { history, sentences: telling.sentences };
}

export const explainStates = (question: StatesQuestion): ExplanationStep[] =>
  stepsOf(tellStates(question).sentences);

/** The first thing to look at: the relay that everything asked first hangs on, or the path itself. */
export function hintStates(question: StatesQuestion): HintSaid {
  const entries = entriesOf(question);
  const [first] = entries;
  const history = historyOf(question.circuit, question.scenario);
  const asked = entries.flatMap(({ item, after }) => loadsOf(history, item).map((load) => ({ load, after })));
  const { sentences } = tellStates(question);
  const relevant = relevantTo(history, asked);
  const relays = [...relevant]
    .map((mechanism) => history.machine.plan.mechanisms[mechanism]!)
    .filter(({ drive }) => drive !== 'act' && drive !== 'feed')
    .map(({ device }) => device);
  const earliest =
    sentences.flatMap(({ about }) => about.filter((name) => relays.includes(name)))[0] ?? relays[0];
  return earliest === undefined
    ? { says: 'followPath', item: first!.item }
    : { says: 'beginWith', device: earliest, moment: momentAt(question, first!.after) };
}
