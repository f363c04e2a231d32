/** What opens on a short circuit. */
import type { Machine } from './machine.ts';
import { partitionFor } from './partition.ts';
import { type ShortWay, shortedByContacts, shortedBySupplies } from './short-way.ts';
import type { State } from './state.ts';

interface Protecting {
  readonly mechanism: number;
  readonly amps: number | undefined;
}

/** The protective mechanisms on a way, in its order. A pole that is welded can't interrupt anything. */
function protecting(machine: Machine, switches: readonly number[]): Protecting[] {
  return switches.flatMap((part) => {
    const mechanism = machine.switchMechanism[part]!;
    const found = mechanism < 0 ? undefined : machine.plan.mechanisms[mechanism];
    if (!found?.protects || found.frozenAt !== undefined || machine.plan.switches[part]!.fixed) return [];
    return [{ mechanism, amps: found.amps }];
  });
}

/**
 * The one that opens: the lowest rating on the way, of equal ones the one nearest the fault. One without a rating is taken
 * for lower than what lies before it, since fuses are graded towards the loads (common practice, no source).
 */
function openerOf(way: readonly Protecting[]): number | undefined {
  let best: Protecting | undefined;
  for (const next of way) if ((next.amps ?? Infinity) <= (best?.amps ?? Infinity)) best = next;
  if (best?.amps !== undefined) {
    const behind = way.slice(way.lastIndexOf(best) + 1);
    best = behind.findLast(({ amps }) => amps === undefined) ?? best;
  }
  return best?.mechanism;
}

/** In a ring of supplies no place is nearer the fault than another: all of the lowest rating open. */
function openersInRing(ring: readonly Protecting[]): number[] {
  const rating = ({ amps }: Protecting): number => amps ?? Infinity;
  const lowest = Math.min(...ring.map(rating));
  const open = ring.filter((each) => rating(each) === lowest).map(({ mechanism }) => mechanism);
  return [...new Set(open)].sort((a, b) => a - b);
}

function open(machine: Machine, state: State, mechanism: number): void {
  const closed = machine.plan.switches.find((part) => part.mechanism === mechanism)!.closedIn[0]!;
  const opened = 1 << (1 - closed);
  state.at[mechanism] = opened;
  state.goal[mechanism] = opened;
  state.tripped.push(mechanism);
}

function lose(state: State, supply: number): void {
  if (!state.supplyOn[supply]) return;
  state.supplyOn[supply] = 0;
  state.shorted.push(supply);
}

/**
 * Clears one short circuit of a group of supplies: a protective device on the way of its current opens, or, where there is
 * none, the supplies on the way are lost. One at a time, because what opens may clear the others too. The partition is
 * brought up to date; voltages are not.
 */
export function clearShort(machine: Machine, state: State, group: readonly number[]): void {
  let ring = false;
  let way: ShortWay | undefined;
  // A supply short-circuited by contacts alone comes before rings of several.
  for (const supply of group) way ??= shortedByContacts(machine, state, supply);
  if (!way) {
    ring = true;
    way = shortedBySupplies(machine, state, group[0]!) ?? { switches: [], supplies: group };
  }
  const devices = protecting(machine, way.switches);
  const opener = openerOf(devices);
  if (opener === undefined) for (const supply of [...way.supplies].sort((a, b) => a - b)) lose(state, supply);
  else for (const mechanism of ring ? openersInRing(devices) : [opener]) open(machine, state, mechanism);
  state.partition = partitionFor(machine, state.at, state.supplyOn);
}
