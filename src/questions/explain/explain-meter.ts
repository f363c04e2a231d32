import type { ExplanationStep, QuestionOf } from '../../../shared/question.ts';
import type { Blocker } from '../../../shared/solution.ts';
import { isClosed, meter } from '../../solver/index.ts';
import { listed } from '../ask/situation.ts';
import { type History, historyOf, mechanismsOn, relevantTo } from './history.ts';
import { type Reach, reachOf, stoppedAt } from './potential.ts';
import { type Sentence, Telling } from './telling.ts';
import { aboutHops, hopText, opensWords, openWords, positionWords, voltsText } from './wording.ts';

interface Point {
  readonly terminal: string;
  readonly reach: Reach | undefined;
  /** What keeps it from the line poles of its supply, where nothing else joins it to one. */
  readonly stoppedBy: readonly Blocker[];
}

/** `-K3:12 is joined to A:L by -K3:11-12 and -F1:1-2`, and what a load between means for its potential. */
function pointWords(history: History, { terminal, reach, stoppedBy }: Point): string {
  const { machine, stages } = history;
  if (!reach) return `Nothing joins ${terminal} to a supply: it hangs free`;
  const { pole, hops, loads, dirty } = reach;
  const { volts } = meter(machine, stages.at(-1)!.state, terminal, pole);
  const by = ` by ${listed(hops.map(hopText))}`;
  if (terminal === pole) return `${terminal} is a pole of supply ${reach.supply}`;
  if (hops.length === 0 && !dirty) return `${terminal} is on the conductor of ${pole}`;
  const same = Math.abs(volts) < 1e-3;
  const stop = stoppedBy.length > 0 ? `: ${opensWords(history, stoppedBy, stages.at(-1)!.state)}` : '';
  if (loads.length === 0 && !dirty) return `${terminal} is joined to ${pole}${by}`;
  if (same && loads.length > 0)
    return `${terminal} is joined to ${pole}${by}; no current flows in ${listed(loads)}, so nothing is dropped there${stop}`;
  const part = dirty ? 'the dirty contact' : listed(loads);
  return `${terminal} is joined to ${pole}${by}; current flows, and ${part} drops ${voltsText(volts)}`;
}

/** What follows from where the two points are. */
function conclusion({ machine, stages }: History, [one, other]: readonly [Point, Point]): string {
  const { volts, floating } = meter(machine, stages.at(-1)!.state, one.terminal, other.terminal);
  if (!floating) {
    return Math.abs(volts) < 1e-3
      ? 'Both points have the same potential: the meter reads 0 V'
      : `Between the two the meter reads ${voltsText(volts)}`;
  }
  if (one.reach && other.reach && one.reach.supply !== other.reach.supply)
    return `Supplies ${one.reach.supply} and ${other.reach.supply} are isolated from each other and have no common reference: the meter shows nothing`;
  return 'The two points have no common reference: the meter shows nothing';
}

/** Index of the contact that lies right between the two points, if there is one. */
const contactBetween = ({ machine }: History, points: readonly string[]): number =>
  machine.plan.switches.findIndex(
    ({ device, from, to }) =>
      from !== to && points.includes(`${device}:${from}`) && points.includes(`${device}:${to}`),
  );

/** A contact that is measured across: how it stands, and why. */
function sayAcross(telling: Telling, { points, scenario }: QuestionOf<'meter'>): void {
  const { history } = telling;
  const { machine, stages } = history;
  const { state, after } = stages.at(-1)!;
  const index = contactBetween(history, points);
  if (index < 0) return;
  const { device, from, to, mechanism, form, fixed } = machine.plan.switches[index]!;
  const hop = { device, enter: from, leave: to };
  const dirty = scenario.faults.some(
    (fault) => fault.kind === 'dirty' && points.includes(fault.from) && points.includes(fault.to),
  );
  const because = fixed === 'open' ? 'fault' : form === 'make' ? 'rest' : 'moved';
  const text = !isClosed(machine, state.at, index)
    ? openWords(history, { ...hop, because }, state)
    : dirty
      ? `${hopText(hop)} is closed but dirty: its resistance is far above that of the load behind it`
      : `${hopText(hop)} is closed: ${positionWords(history, mechanism, state)}`;
  if (!telling.sentences.some((sentence) => sentence.text.includes(text)))
    telling.say(after, text, [...points]);
  telling.restBehind([{ load: '', fed: false, path: [hop], stoppedBy: [] }], after);
}

export function tellMeter(question: QuestionOf<'meter'>): {
  history: History;
  sentences: readonly Sentence[];
} {
  const { circuit, scenario, points } = question;
  const history = historyOf(circuit, scenario);
  const { machine, stages } = history;
  const last = stages.at(-1)!;
  const both = points.map((terminal): Point => {
    const reach = reachOf(machine, last.state, terminal);
    const stoppedBy =
      reach && reach.loads.length > 0 ? stoppedAt(machine, last.state, terminal, reach.supply) : [];
    return { terminal, reach, stoppedBy };
  }) as [Point, Point];
  const traces = both.map(({ reach, stoppedBy }) => ({
    load: '',
    fed: false,
    path: [...(reach?.hops ?? [])],
    stoppedBy: [...stoppedBy],
  }));
  const across = machine.plan.switches[contactBetween(history, points)]?.mechanism ?? -1;
  const between = new Set([across, ...traces.flatMap((trace) => mechanismsOn(history, trace))]);
  const coils = machine.plan.loads.flatMap(({ id, mechanism }) =>
    mechanism >= 0 && between.has(mechanism) ? [id] : [],
  );
  const telling = new Telling(
    history,
    relevantTo(
      history,
      coils.map((load) => ({ load, after: last.after })),
    ),
  );
  for (const stage of stages) telling.stage(stage);
  both.forEach((point, index) => {
    const trace = traces[index]!;
    telling.say(last.after, pointWords(history, point), [
      point.terminal,
      ...aboutHops([...trace.path, ...trace.stoppedBy]),
    ]);
    telling.restBehind([trace], last.after);
  });
  sayAcross(telling, question);
  telling.say(last.after, conclusion(history, both), [...points]);
  return { history, sentences: telling.sentences };
}

export const explainMeter = (question: QuestionOf<'meter'>): ExplanationStep[] =>
  tellMeter(question).sentences.map(({ text, about }) => ({ text, about: [...about] }));

export const hintMeter = ({ points: [first, second] }: QuestionOf<'meter'>): string =>
  `Take each point by itself: to which pole of which supply do closed contacts join ${first}, and to which ${second}? A load in which no current flows drops nothing.`;
