import type { Partition } from './islands.ts';
import { type Machine, machineOf } from './machine.ts';
import type { Plan } from './plan.ts';

/** Same conductors, contacts in the same places, same loads and supplies; feeding devices the same altogether. */
function sameWiring(one: Plan, other: Plan): boolean {
  if (one.nodes !== other.nodes || one.joins !== other.joins || one.supplies !== other.supplies) return false;
  if (one.switches.length !== other.switches.length || one.loads.length !== other.loads.length) return false;
  if (one.mechanisms.length !== other.mechanisms.length) return false;
  for (let index = 0; index < one.switches.length; index++) {
    const a = one.switches[index]!;
    const b = other.switches[index]!;
    if (a === b) continue;
    const feeding = a.mechanism < 0 || one.mechanisms[a.mechanism]!.drive === 'feed';
    if (feeding || a.a !== b.a || a.b !== b.b || a.mechanism !== b.mechanism) return false;
  }
  for (let index = 0; index < one.mechanisms.length; index++) {
    const a = one.mechanisms[index]!;
    const b = other.mechanisms[index]!;
    if (a !== b && (a.id !== b.id || a.drive === 'feed' || b.drive === 'feed')) return false;
  }
  for (let index = 0; index < one.loads.length; index++) {
    const a = one.loads[index]!;
    const b = other.loads[index]!;
    if (a === b) continue;
    if (a.a !== b.a || a.b !== b.b || a.siemens !== b.siemens || a.mechanism !== b.mechanism) return false;
    if (a.role !== b.role || a.volts !== b.volts || a.limits !== b.limits || a.dead !== b.dead) return false;
  }
  return true;
}

/** A partition with the contacts of another plan in it. */
function remasked(partition: Partition, closedMask: Uint8Array): Partition {
  const { switches } = partition;
  let same = true;
  for (let index = 0; index < switches.length && same; index++)
    same = partition.closedMask[index] === closedMask[switches[index]!];
  if (same) return partition;
  return { ...partition, closedMask: partition.closedMask.map((_, index) => closedMask[switches[index]!]!) };
}

/**
 * The machine of a changed plan. Where the change leaves the wiring alone (contacts that close otherwise, mechanisms
 * that move otherwise, inputs read otherwise) the partitions of the first machine are taken over, which is most of the
 * cost; else it is compiled afresh. The two machines share working memory: run them one after the other.
 */
export function variantOf(machine: Machine, plan: Plan): Machine {
  if (plan === machine.plan) return machine;
  if (!sameWiring(machine.plan, plan)) return machineOf(plan);
  const fresh = machineOf(plan);
  for (const [key, partition] of machine.partitions)
    fresh.partitions.set(key, remasked(partition, fresh.closedMask));
  return fresh;
}
