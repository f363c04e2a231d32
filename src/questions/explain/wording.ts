/** Contacts, paths and positions as statements. */
import type { Blocker, TraceHop } from '../../../shared/solution.ts';
import { deviceOf, faultSaid, traitsOf } from '../../circuit/index.ts';
import type { State } from '../../solver/index.ts';
import type { Hop, PlaceSaid, Places, PositionSaid, UnfedSaid } from '../../words/index.ts';
import { type History, switchAt } from './history.ts';

export const hopOf = ({ device, enter, leave }: TraceHop): Hop =>
  leave === undefined ? { device, enter } : { device, enter, leave };

/** The same hop the other way round. */
export const turned = ({ device, enter, leave }: TraceHop): Hop =>
  leave === undefined ? { device, enter } : { device, enter: leave, leave: enter };

/** Terminals and devices of hops, to point at. */
export const aboutHops = (hops: readonly TraceHop[]): string[] => [
  ...new Set(
    hops.flatMap(({ device, enter, leave }) => [
      `${device}:${enter}`,
      ...(leave === undefined ? [] : [`${device}:${leave}`]),
    ]),
  ),
];

/** How what moves a contact stands. */
export function positionOf({ machine, circuit }: History, mechanism: number, state: State): PositionSaid {
  const { id: device, device: whole, positions } = machine.plan.mechanisms[mechanism]!;
  const at = positions[31 - Math.clz32(state.at[mechanism]!)]!;
  const [first, other] = traitsOf(deviceOf(circuit, whole)!).stands!;
  const says = at === positions[0] ? first : other;
  return says === 'standsAt' ? { says, device, at } : { says, device };
}

function faultOf({ scenario }: History, { device, enter, leave }: Blocker) {
  const ends = [`${device}:${enter}`, `${device}:${leave}`];
  return scenario.faults.find((each) => {
    if ('at' in each) return ends.includes(each.at);
    if ('one' in each) return ends.includes(each.one) || ends.includes(each.other);
    if ('from' in each) return ends.includes(each.from) || ends.includes(each.to);
    return each.device === device;
  });
}

function faultyPlace(history: History, blocker: Blocker): PlaceSaid {
  const { device, enter, leave } = blocker;
  const found = faultOf(history, blocker);
  const fault = found && faultSaid(found, history.circuit);
  if (enter === leave)
    return fault ? { says: 'fault', fault } : { says: 'conductorOff', at: `${device}:${enter}` };
  const contact = { device, enter, leave };
  return fault ? { says: 'neverClosesBecause', contact, fault } : { says: 'neverCloses', contact };
}

/** Why one place is open. */
export function placeOpen(history: History, blocker: Blocker, state: State): PlaceSaid {
  const { device, enter, leave, because } = blocker;
  if (history.circuit.supplies.some(({ name }) => name === device))
    return { says: 'supplyOff', supply: device };
  if (because === 'fault') return faultyPlace(history, blocker);
  const contact = { device, enter, leave };
  if (because === 'travelling') return { says: 'travelling', contact };
  const { mechanism } = switchAt(history, blocker)!;
  return history.machine.plan.mechanisms[mechanism]!.drive === 'feed'
    ? { says: 'open', contact }
    : { says: 'openBecause', contact, position: positionOf(history, mechanism, state) };
}

/** Several open places, each with its reason. */
export const placesOpen = (history: History, blockers: readonly Blocker[], state: State): Places =>
  blockers.map((blocker) => placeOpen(history, blocker, state));

/** An open place without its reason. */
export const placeAlone = (place: PlaceSaid): PlaceSaid =>
  'contact' in place ? { says: 'open', contact: place.contact } : place;

/** What is open besides, without its reasons; nothing where nothing is. */
export function openToo(
  history: History,
  besides: readonly Blocker[],
  state: State,
): { readonly besides?: Places } {
  return besides.length > 0 ? { besides: placesOpen(history, besides, state).map(placeAlone) } : {};
}

/** Why nothing flows: every place that stops it, and what is open besides. */
export const stopped = (
  history: History,
  stoppedBy: readonly Blocker[],
  state: State,
  besides: readonly Blocker[],
): UnfedSaid =>
  stoppedBy.length === 0
    ? { says: 'noPath' }
    : {
        says: 'stopped',
        open: placesOpen(history, stoppedBy, state),
        ...openToo(history, besides, state),
      };
