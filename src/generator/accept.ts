/** Whether a draft makes a question worth asking: acceptance as data, with the reason where it is refused. */
import type { Scenario } from '../../shared/scenario.ts';
import { checkRules, readAs } from '../circuit/index.ts';
import {
  inputStateAt,
  lampStateAt,
  type Machine,
  onlyState,
  type Standing,
  type State,
  voltsAcross,
} from '../solver/index.ts';
import { differ, loadsKey, type Picture } from './picture.ts';
import type { Draft } from './types.ts';
import { type Workbench, workbenchFor, wrongPictures } from './workbench.ts';

export type Reason =
  /** A drawing rule is broken; `detail` names it. */
  | 'rule'
  /** Something depends on which of two mechanisms is faster. */
  | 'race'
  /** Some mechanism never rests. */
  | 'no-rest'
  /** More orders of operation than are tried. */
  | 'too-many-orders'
  /** A protective device opened, or a supply was short-circuited. */
  | 'tripped'
  /** A coil, lamp or input lands between its limits. */
  | 'between'
  /** All of two or three lamps and inputs the same: answered by guessing one pattern. */
  | 'one-pattern'
  /** All as it was before the first act. */
  | 'as-at-rest'
  /** Every misconception gives the right answer. */
  | 'tells-nothing-apart'
  /** Refused by whoever asked for it. */
  | 'not-wanted';

export interface Refused {
  readonly kind: 'refused';
  readonly reason: Reason;
  readonly detail?: string;
}

export interface Accepted {
  readonly kind: 'accepted';
  readonly draft: Draft;
  readonly rest: Picture;
  readonly after: Picture;
  /** Misconceptions whose answer differs from the right one, in a lamp, an input or a relay. */
  readonly tellsApart: readonly string[];
  /** Those of them that are told apart by the lamps alone, by the inputs alone, by the relays alone. */
  readonly tellsApartBy: Readonly<Record<keyof Picture, readonly string[]>>;
  /** How many different wrong answers (lamps and inputs) the misconceptions give between them. */
  readonly wrongAnswers: number;
}

export type Acceptance = Accepted | Refused;

export interface AcceptOptions {
  /** Lets through what is answered by one pattern or stays as it was: a small share, so that neither is excluded. */
  readonly plain: boolean;
  /** What is asked is how things stand after each act: that they end as they began, or all alike, tells nothing then. */
  readonly course?: boolean;
}

/** Of so many lamps and inputs all are asked, and one pattern may answer them; of more it is drawn which, and how many of them are on. */
const FEW = 3;

const refused = (reason: Reason, detail?: string): Refused => ({
  kind: 'refused',
  reason,
  ...(detail ? { detail } : {}),
});

/** Name of the first load of a settled state that is between its limits. */
function between(machine: Machine, state: State): string | undefined {
  const { loads } = machine.plan;
  for (let index = 0; index < loads.length; index++) {
    const { role, id } = loads[index]!;
    if (role === 'dirt') continue;
    switch (readAs(role)) {
      // A motor in star has 58 % of its winding's voltage and is meant to: no motor is asked about.
      case 'winding':
        break;
      case 'coil': {
        const volts = voltsAcross(state, index);
        const { limits, volts: rated, dead } = loads[index]!;
        if (
          !dead &&
          limits &&
          volts > limits.release * rated * 1.001 &&
          volts < limits.operate * rated * 0.999
        )
          return id;
        break;
      }
      case 'input':
        if (inputStateAt(machine, state, index) === 'undefined') return id;
        break;
      default:
        if (lampStateAt(machine, state, index) === 'dim') return id;
    }
  }
  return undefined;
}

/** Something is wrong, or a supply was gone for a while: that things stand as at rest is then worth asking. */
const mayEndAtRest = ({ faults, acts }: Scenario): boolean =>
  faults.length > 0 || acts.some(({ kind }) => kind === 'close' || kind === 'restore');

/** The one state in which a standing rests (or flashes, where that is allowed), or why there is none. */
function settledState(machine: Machine, standing: Standing, mayFlash: boolean): State | Refused {
  const { endings, complete } = standing;
  if (!complete) return refused('too-many-orders');
  if (endings.length > 1) return refused('race');
  const state =
    onlyState(machine, standing) ??
    (mayFlash && endings[0]!.states.length === 1 ? endings[0]!.states[0]! : undefined);
  if (!state) return refused('no-rest');
  if (state.tripped.length + state.shorted.length > 0) return refused('tripped');
  const lost = between(machine, state);
  return lost === undefined ? state : refused('between', lost);
}

const isRefused = (found: State | Refused): found is Refused => 'kind' in found;

/** A scenario as far as it is right, before misconceptions are asked. */
interface Sound {
  readonly kind: 'sound';
  readonly bench: Workbench;
  readonly rest: Picture;
  readonly after: Picture;
  /** After each act but the last, where the course is asked for. */
  readonly between: readonly Picture[];
}

/** Whether the scenario leads to one readable state that isn't guessed at sight. */
function soundScenario(
  bench: Workbench,
  draft: Draft,
  { plain, course = false }: AcceptOptions,
): Sound | Refused {
  const { machine } = bench;
  const { scenario } = draft;
  const mayFlash = draft.ends === 'flashing';
  let standing = bench.beginning;
  const beginning = settledState(machine, standing, mayFlash);
  if (isRefused(beginning)) return beginning;
  let state = beginning;
  const between: Picture[] = [];
  for (const [index, act] of scenario.acts.entries()) {
    if (course && index > 0) between.push(bench.read(state));
    standing = bench.after(standing, act);
    const found = settledState(machine, standing, mayFlash);
    if (isRefused(found)) return found;
    state = found;
  }
  const rest = bench.read(beginning);
  const after = bench.read(state);
  if (course) {
    const begins = JSON.stringify(rest);
    if ([...between, after].every((picture) => JSON.stringify(picture) === begins))
      return refused('as-at-rest');
  } else if (!plain) {
    const loads = [
      ...after.lamps.map((lamp) => lamp !== 'dark'),
      ...after.inputs.map((input) => input !== '0'),
    ];
    if (loads.length > 1 && loads.length <= FEW && loads.every((on) => on === loads[0]))
      return refused('one-pattern');
    if (loadsKey(after) === loadsKey(rest) && !mayEndAtRest(scenario)) return refused('as-at-rest');
  }
  return { kind: 'sound', bench, rest, after, between };
}

/** Which misconceptions see a scenario end otherwise than it does. */
function toldApart(bench: Workbench, scenario: Scenario, after: Picture) {
  const apart: string[] = [];
  const by = { lamps: [] as string[], inputs: [] as string[], relays: [] as string[] };
  const answers = new Set<string>();
  for (const { id, picture } of wrongPictures(bench, scenario)) {
    const lamps = differ(picture.lamps, after.lamps);
    const inputs = differ(picture.inputs, after.inputs);
    const relays = differ(picture.relays, after.relays);
    if (lamps) by.lamps.push(id);
    if (inputs) by.inputs.push(id);
    if (relays) by.relays.push(id);
    if (lamps || inputs) answers.add(loadsKey(picture));
    if (lamps || inputs || relays) apart.push(id);
  }
  return { apart, by, answers };
}

function judge(draft: Draft, { bench, rest, after, between }: Sound): Acceptance {
  const { scenario } = draft;
  let told = toldApart(bench, scenario, after);
  // Where the course is asked for, it does to be told apart on the way.
  for (let acts = between.length; acts > 0 && told.apart.length === 0; acts--)
    told = toldApart(bench, { ...scenario, acts: scenario.acts.slice(0, acts) }, between[acts - 1]!);
  const { apart, by, answers } = told;
  if (apart.length === 0) return refused('tells-nothing-apart');
  return {
    kind: 'accepted',
    draft,
    rest,
    after,
    tellsApart: apart,
    tellsApartBy: by,
    wrongAnswers: answers.size,
  };
}

/** Refused with the rule's name where the drawing breaks one. Apart from `accept`, because it costs as much as all of that. */
export function keepsRules({ circuit }: Draft): Refused | undefined {
  const [finding] = checkRules(circuit);
  return finding && refused('rule', finding.code);
}

/** How much an accepted draft tells: wrong ideas told apart from the right answer by lamps and inputs, and from each other. */
export const telling = ({ tellsApart, tellsApartBy: { lamps, inputs }, wrongAnswers }: Accepted): number =>
  2 * (new Set([...lamps, ...inputs]).size + wrongAnswers) + tellsApart.length;

/** The draft with each of its scenarios alone. */
export const eachAsked = (draft: Draft): Draft[] =>
  [draft.scenario, ...draft.others].map((scenario) => ({ ...draft, scenario, others: [] }));

/**
 * Judges drafts of one circuit that differ in what is asked, one after the other and only as far as somebody reads on. Nothing
 * about them is trusted.
 */
export function* accept(asked: Iterable<Draft>, options: AcceptOptions): Generator<Acceptance, void> {
  const benches = new Map<string, Workbench>();
  for (const draft of asked) {
    const key = JSON.stringify(draft.scenario.faults);
    let bench = benches.get(key);
    if (!bench) {
      bench = workbenchFor(draft, draft.scenario.faults);
      benches.set(key, bench);
    }
    const sound = soundScenario(bench, draft, options);
    yield sound.kind === 'refused' ? sound : judge(draft, sound);
  }
}
