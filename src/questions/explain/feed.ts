/** The way by which a load is fed, told from pole to pole: which contacts it takes, and why those are closed. */
import type { LoadTrace, TraceHop } from '../../../shared/solution.ts';
import type { PlanSwitch, State } from '../../solver/index.ts';
import type { ClosedSaid, Feed, FeedPart } from '../../words/index.ts';
import { type History, switchAt } from './history.ts';
import { hopOf, positionOf } from './wording.ts';

/** Why a contact is closed; nothing of fuses, breakers and isolators, which are closed unless something else is said. */
function whyClosed(history: History, part: PlanSwitch, state: State, fedBy: number): ClosedSaid | undefined {
  if (part.fixed === 'closed') return { says: 'welded' };
  if (part.mechanism < 0 || history.machine.plan.mechanisms[part.mechanism]!.drive === 'feed')
    return undefined;
  // That a relay has operated because it has operated tells nobody anything.
  if (part.mechanism === fedBy) return { says: 'ownContact' };
  return positionOf(history, part.mechanism, state);
}

/** Contacts that follow one another and are closed for the same reason are told together. */
function partsOf(history: History, hops: readonly TraceHop[], state: State, fedBy: number): FeedPart[] {
  const parts: { hops: TraceHop[]; closed?: ClosedSaid }[] = [];
  let last = -1;
  for (const hop of hops) {
    const part = switchAt(history, hop);
    const closed = part && whyClosed(history, part, state, fedBy);
    const mechanism = closed && closed.says !== 'welded' ? part.mechanism : -1;
    if (mechanism >= 0 && mechanism === last) parts.at(-1)!.hops.push(hop);
    else parts.push({ hops: [hop], ...(closed ? { closed } : {}) });
    last = mechanism;
  }
  return parts.map(({ hops: all, ...part }) => ({ ...part, hops: all.map(hopOf) }));
}

const poleOf = ({ device, enter }: TraceHop): string => `${device}:${enter}`;

/** A way that isn't a load's own, part by part. */
export const waySaid = (history: History, hops: readonly TraceHop[], state: State): readonly FeedPart[] =>
  partsOf(history, hops, state, -1);

/** How a load with voltage gets it, in a state of the machine. */
export function feedOf(history: History, { load, path }: LoadTrace, state: State): Feed {
  const { loads } = history.machine.plan;
  const { device, mechanism } = loads.find(({ id }) => id === load)!;
  const own = ({ device: name, enter, leave }: TraceHop): boolean =>
    name === device &&
    loads.some((part) => part.device === name && [part.from, part.to].includes(enter)) &&
    leave !== undefined;
  const first = path.findIndex(own);
  const after = path.findLastIndex(own);
  return {
    from: poleOf(path[0]!),
    through: partsOf(history, path.slice(1, first), state, mechanism),
    back: partsOf(history, path.slice(after + 1, -1), state, mechanism),
    to: poleOf(path.at(-1)!),
  };
}

/** The same without why its contacts are closed: of a moment at which that has just been told. */
export function plain({ through, back, ...poles }: Feed): Feed {
  const only = ({ hops }: FeedPart): FeedPart => ({ hops });
  return { ...poles, through: through.map(only), back: back.map(only) };
}
