import type { ExplanationStep } from '../../../shared/question.ts';
import type { LoadTrace } from '../../../shared/solution.ts';
import { timeInWords } from '../../circuit/index.ts';
import { advance, copyState, type State, traceLoad, voltsAcross } from '../../solver/index.ts';
import { type Entry, entriesOf, momentInWords, type StatesQuestion } from '../entries.ts';
import { stateOf } from '../items.ts';
import { standpointOf } from '../solving.ts';
import { type History, historyOf, relevantTo } from './history.ts';
import { whyRelay } from './relay-why.ts';
import { type Sentence, Telling } from './telling.ts';
import { opensWords, pathText, stoppedWords, voltsText } from './wording.ts';

const SAID: Readonly<Record<string, string>> = {
  lit: 'is lit',
  dark: 'is dark',
  dim: 'is dim',
  on: 'is on',
  off: 'is off',
  weak: 'has too little voltage',
  '1': 'reads 1',
  '0': 'reads 0',
  undefined: 'reads neither 0 nor 1',
};

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

function flasherWords({ machine }: History, id: string): string {
  const { drive, delays } = machine.plan.mechanisms.find((mechanism) => mechanism.id === id) ?? {};
  return drive === 'flasher' && delays
    ? ` (${timeInWords(delays[0]!)} on, ${timeInWords(delays[1]!)} off)`
    : '';
}

/** `, after 2,` where more comes; a sequence asks for several moments. */
const whenWords = ({ stages }: History, after: number): string =>
  after === stages.length - 1 ? '' : after === 0 ? ', at the start,' : `, after ${after},`;

function sayFlashing(telling: Telling, { item, after }: Entry, load: string): void {
  const { history } = telling;
  const { on, off } = onAndOff(history, after, load);
  const path = on ? `it is fed by ${pathText(history, on)}` : 'it is never fed';
  const devices = off ? [...new Set(off[0].stoppedBy.map(({ device }) => device))] : [];
  const gap = off ? `; in between ${opensWords(history, off[0].stoppedBy, off[1])}` : '';
  const times = devices.map((device) => flasherWords(history, device)).join('');
  telling.say(after, `${item}${whenWords(history, after)} never rests: ${path}${gap}${times}`, [
    item,
    ...devices,
  ]);
}

/** One thing asked: its path, or what stops it. */
function sayLoad(telling: Telling, entry: Entry, state: string): void {
  const { history } = telling;
  const { item, after } = entry;
  const load = tellingLoad(history, item, after);
  const when = whenWords(history, after);
  if (state === 'flashing' || state === 'pulsing' || state === 'changing') {
    sayFlashing(telling, entry, load);
    return;
  }
  const trace = history.trace(after, load)!;
  const stage = history.stages[after]!;
  const index = history.machine.plan.loads.findIndex(({ id }) => id === load);
  const part = history.machine.plan.loads[index]!;
  const volts = voltsAcross(stage.state, index);
  const whole = state === 'lit' || state === 'on' || state === '1';
  const short = trace.fed && !whole ? ` with only ${voltsText(volts)} of ${part.volts} V` : '';
  const why = part.dead
    ? 'it is burnt through'
    : trace.fed
      ? pathText(history, trace)
      : stoppedWords(history, trace.stoppedBy, stage.state);
  telling.say(after, `${item}${when} ${SAID[state] ?? state}${short}: ${why}`, [item], [trace]);
  telling.restBehind([trace], after);
}

function sayRelay(telling: Telling, entry: Entry, state: string): void {
  const { history } = telling;
  const { item, after } = entry;
  const mechanism = history.machine.mechanismOf.get(item)!;
  const when = whenWords(history, after);
  if (state === 'changing') {
    sayFlashing(telling, entry, item);
    return;
  }
  const why = whyRelay(history, after, mechanism);
  const stands = state === 'operated' ? 'has operated' : 'is at rest';
  if (telling.wasTold(mechanism, why)) {
    telling.say(after, `${item}${when} ${stands}, as said above`, [item], why.traces);
    return;
  }
  telling.noteTold(mechanism, why);
  telling.say(after, `${item}${when} ${stands}: ${why.text}`, [item], why.traces);
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

export function explainStates(question: StatesQuestion): ExplanationStep[] {
  return tellStates(question).sentences.map(({ text, about }) => ({ text, about: [...about] }));
}

/** The first thing to look at: the relay that everything asked first hangs on, or the path itself. */
export function hintStates(question: StatesQuestion): string {
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
  if (earliest !== undefined)
    return `Begin with ${earliest}: follow the path of its coil from one pole to the other, and see whether it is closed ${momentInWords(question, first!.after)}.`;
  return `Follow the path of ${first!.item} from one pole to the other, contact by contact, and look at how each contact stands.`;
}
