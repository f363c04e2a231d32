/** Contacts, paths and positions as an electrician says them. */
import type { Blocker, LoadTrace, TraceHop } from '../../../shared/solution.ts';
import { deviceOf, faultInWords } from '../../circuit/index.ts';
import type { State } from '../../solver/index.ts';
import type { History } from './history.ts';

/** `-K3:11-14`; a stop without a way through `A:L`. */
export const hopText = ({ device, enter, leave }: TraceHop): string =>
  leave === undefined ? `${device}:${enter}` : `${device}:${enter}-${leave}`;

/** The same hop the other way round. */
export const turned = ({ device, enter, leave }: TraceHop): TraceHop => ({
  device,
  enter: leave ?? enter,
  ...(leave === undefined ? {} : { leave: enter }),
});

/** A path from pole to pole: `A:L, -F1:1-2, -B1:13-14, coil A1-A2, A:N`. The coil that it is about has no designation. */
export function pathText({ machine }: History, { load, path }: LoadTrace): string {
  const own = machine.plan.loads.find(({ id }) => id === load);
  const coil = own !== undefined && own.mechanism >= 0;
  return path
    .map((hop) => {
      const itself =
        coil &&
        hop.device === own.device &&
        (hop.enter === own.from || hop.enter === own.to) &&
        (hop.leave === own.from || hop.leave === own.to);
      return itself ? `coil ${hop.enter}-${hop.leave}` : hopText(hop);
    })
    .join(', ');
}

/** Terminals and devices of hops, to point at. */
export const aboutHops = (hops: readonly TraceHop[]): string[] => [
  ...new Set(
    hops.flatMap(({ device, enter, leave }) => [
      `${device}:${enter}`,
      ...(leave === undefined ? [] : [`${device}:${leave}`]),
    ]),
  ),
];

/** `-S1 is pressed`, `-K3 has operated`, `-S3 stands at Hand`. */
export function positionWords({ machine, circuit }: History, mechanism: number, state: State): string {
  const { id, device, positions, drive } = machine.plan.mechanisms[mechanism]!;
  const at = positions[31 - Math.clz32(state.at[mechanism]!)]!;
  const moved = at !== positions[0];
  const kind = deviceOf(circuit, device)?.kind;
  switch (kind) {
    case 'push-button':
    case 'emergency-stop':
      return `${id} is ${moved ? '' : 'not '}pressed`;
    case 'selector':
      return `${id} stands at ${at}`;
    case 'field-contact':
    case 'limit-switch':
    case 'float-switch':
      return `${id} is ${moved ? '' : 'not '}actuated`;
    case 'overload':
      return `${id} has ${moved ? '' : 'not '}tripped`;
    case 'outputs':
      return `the output ${id} is ${at}`;
    case 'fuse':
      return moved ? `${id} is blown or taken out` : `${id} is whole`;
    default:
      if (drive === 'feed') return `${id} is ${at}`;
      return moved ? `${id} has operated` : `${id} has not operated`;
  }
}

const faultOf = ({ scenario, circuit }: History, { device, enter, leave }: Blocker): string | undefined => {
  const ends = [`${device}:${enter}`, `${device}:${leave}`];
  const fault = scenario.faults.find((each) => {
    if ('at' in each) return ends.includes(each.at);
    if ('one' in each) return ends.includes(each.one) || ends.includes(each.other);
    if ('from' in each) return ends.includes(each.from) || ends.includes(each.to);
    return each.device === device;
  });
  return fault && faultInWords(fault, circuit);
};

/** Why one place is open: `-K3:11-12 is open because -K3 has operated`. */
export function openWords(history: History, blocker: Blocker, state: State): string {
  const { device, enter, leave, because } = blocker;
  if (history.circuit.supplies.some(({ name }) => name === device)) return `supply ${device} is off`;
  const contact = hopText({ device, enter, leave });
  if (because === 'fault') {
    const fault = faultOf(history, blocker);
    if (enter === leave) return fault ?? `the conductor at ${device}:${enter} is off`;
    return fault
      ? `${contact} never closes, because ${fault}`
      : `${contact} never closes because of the fault`;
  }
  if (because === 'travelling') return `${contact} is open because ${device} is on its way`;
  const part = history.machine.plan.switches.find(
    ({ device: name, from, to }) =>
      name === device && ((from === enter && to === leave) || (from === leave && to === enter)),
  )!;
  const feeding = history.machine.plan.mechanisms[part.mechanism]!.drive === 'feed';
  return feeding
    ? `${contact} is open`
    : `${contact} is open because ${positionWords(history, part.mechanism, state)}`;
}

/** Several open places, each with its reason. */
export function opensWords(history: History, blockers: readonly Blocker[], state: State): string {
  const words = blockers.map((blocker) => openWords(history, blocker, state));
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')}, and ${last}`;
}

/** Why nothing flows: every place that stops it. */
export function stoppedWords(history: History, stoppedBy: readonly Blocker[], state: State): string {
  if (stoppedBy.length === 0) return 'no closed path leads from one pole of a supply through it to the other';
  return opensWords(history, stoppedBy, state);
}

/** Volts as a meter shows them: two places, without zeros at the end. */
export const voltsText = (volts: number): string => `${Number(Math.abs(volts).toFixed(2))} V`;
