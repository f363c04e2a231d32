import type { QuestionOf } from '../../../../shared/question.ts';
import type { Blocker, LoadTrace } from '../../../../shared/solution.ts';
import { isClosed, meter } from '../../../solver/index.ts';
import type { HintSaid, PlaceSaid, PointSaid, ReadingSaid } from '../../../words/index.ts';
import { behind } from '../../explain/behind.ts';
import { waySaid } from '../../explain/feed.ts';
import { type History, historyOf, mechanismsOn, relevantTo } from '../../explain/history.ts';
import { type Reach, reachOf, stoppedAt } from '../../explain/potential.ts';
import { stepOf, storyOf } from '../../explain/story.ts';
import { placeOpen, placesOpen, positionOf } from '../../explain/wording.ts';
import type { Decision, Explanation, ExplanationStep } from '../../said.ts';

interface Point {
  readonly terminal: string;
  readonly reach: Reach | undefined;
  /** What keeps it from the line poles of its supply, where nothing else joins it to one. */
  readonly stoppedBy: readonly Blocker[];
}

/** What a point is joined to, and what a load between means for its potential. */
function pointSaid(history: History, { terminal, reach, stoppedBy }: Point): PointSaid {
  const { machine, stages } = history;
  if (!reach) return { says: 'hangsFree', terminal };
  const { pole, hops, loads, dirty } = reach;
  const { state } = stages.at(-1)!;
  const { volts } = meter(machine, state, terminal, pole);
  if (terminal === pole) return { says: 'isPole', terminal, supply: reach.supply };
  if (hops.length === 0 && !dirty) return { says: 'onConductor', terminal, pole };
  const joined = { terminal, pole, by: waySaid(history, hops, state) };
  if (loads.length === 0 && !dirty) return { says: 'joined', ...joined };
  if (Math.abs(volts) < 1e-3 && loads.length > 0)
    return {
      says: 'joinedNoCurrent',
      ...joined,
      ...(stoppedBy.length > 0 ? { open: placesOpen(history, stoppedBy, state) } : {}),
    };
  return dirty
    ? { says: 'joinedDirty', ...joined, drop: volts }
    : { says: 'joinedDropping', ...joined, loads, drop: volts };
}

/** What the meter shows, from where the two points are. */
function readingSaid({ machine, stages }: History, [one, other]: readonly [Point, Point]): ReadingSaid {
  const { volts, floating } = meter(machine, stages.at(-1)!.state, one.terminal, other.terminal);
  if (!floating) return Math.abs(volts) < 1e-3 ? { says: 'samePotential' } : { says: 'reads', volts };
  if (one.reach && other.reach && one.reach.supply !== other.reach.supply)
    return { says: 'isolated', one: one.reach.supply, other: other.reach.supply };
  return { says: 'noReference' };
}

/** Index of the contact that lies right between the two points, if there is one. */
const contactBetween = ({ machine }: History, points: readonly string[]): number =>
  machine.plan.switches.findIndex(
    ({ device, from, to }) =>
      from !== to && points.includes(`${device}:${from}`) && points.includes(`${device}:${to}`),
  );

/** A contact that is measured across: how it stands, and why, where that hasn't been told of the points. */
function across(
  history: History,
  { points, scenario }: QuestionOf<'meter'>,
  told: readonly PointSaid[],
): ExplanationStep[] {
  const { machine, stages } = history;
  const { state } = stages.at(-1)!;
  const index = contactBetween(history, points);
  if (index < 0) return [];
  const { device, from, to, mechanism, form, fixed } = machine.plan.switches[index]!;
  const contact = { device, enter: from, leave: to };
  const dirty = scenario.faults.some(
    (fault) => fault.kind === 'dirty' && points.includes(fault.from) && points.includes(fault.to),
  );
  const because = fixed === 'open' ? 'fault' : form === 'make' ? 'rest' : 'moved';
  const closed = isClosed(machine, state.at, index);
  const place: PlaceSaid = !closed
    ? placeOpen(history, { ...contact, because }, state)
    : dirty
      ? { says: 'closedDirty', contact }
      : fixed === 'closed'
        ? { says: 'closedWelded', contact }
        : { says: 'closed', contact, position: positionOf(history, mechanism, state) };
  if (JSON.stringify(told).includes(JSON.stringify(place))) return [];
  return [stepOf({ says: closed ? 'closed' : 'open', place }, [...points])];
}

export function explainMeter(question: QuestionOf<'meter'>): Explanation {
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
  const traces: LoadTrace[] = both.map(({ reach, stoppedBy }) => ({
    load: '',
    fed: false,
    path: [...(reach?.hops ?? [])],
    stoppedBy: [...stoppedBy],
  }));
  const measured = machine.plan.switches[contactBetween(history, points)];
  if (measured)
    traces.push({
      load: '',
      fed: false,
      path: [{ device: measured.device, enter: measured.from, leave: measured.to }],
      stoppedBy: [],
    });
  const between = new Set(traces.flatMap((trace) => mechanismsOn(history, trace)));
  const coils = machine.plan.loads.flatMap(({ id, mechanism }) =>
    mechanism >= 0 && between.has(mechanism) ? [id] : [],
  );
  const relevant = relevantTo(
    history,
    coils.map((load) => ({ load, after: last.after })),
  );
  const reading = readingSaid(history, both);
  const [one, other] = both.map((point) => pointSaid(history, point)) as [PointSaid, PointSaid];
  const decision: Decision = {
    item: 'volts',
    ...stepOf({ says: 'shows', reading, one, other }, [...points], traces),
    brief: { says: 'showsSo', reading },
    behind: [...across(history, question, [one, other]), ...behind(history, last.after, { traces })],
  };
  return { decides: [decision], story: storyOf(history, relevant) };
}

export const hintMeter = ({ points: [first, second] }: QuestionOf<'meter'>): HintSaid => ({
  says: 'eachPoint',
  first,
  second,
});
