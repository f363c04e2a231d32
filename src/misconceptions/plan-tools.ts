/** What several misconceptions need to change a plan. */
import type { Circuit, Device } from '../../shared/circuit.ts';
import { traitsOf } from '../circuit/index.ts';
import type { Plan, PlanLoad, PlanMechanism, PlanSwitch } from '../solver/index.ts';

/** Moved by a coil: relays, contactors, timers, latching relays. */
export const byCoil = ({ drive }: PlanMechanism): boolean => drive !== 'act' && drive !== 'feed';

/** A contact that a coil moves. */
export const isRelayContact = (plan: Plan, { mechanism }: PlanSwitch): boolean =>
  mechanism >= 0 && byCoil(plan.mechanisms[mechanism]!);

/** The contact left for good as the drawing shows it. A fault in it stays. */
export const asDrawn = (contact: PlanSwitch): PlanSwitch =>
  contact.fixed ? contact : { ...contact, fixed: contact.closedIn.includes(0) ? 'closed' : 'open' };

export const fixedAs = (contact: PlanSwitch, fixed: 'closed' | 'open'): PlanSwitch =>
  contact.fixed ? contact : { ...contact, fixed };

/** The plan with some contacts changed; undefined when none was, so that an idea that makes no difference is left out. */
export function withSwitches(
  plan: Plan,
  change: (contact: PlanSwitch, index: number) => PlanSwitch,
): Plan | undefined {
  let changed = false;
  const switches = plan.switches.map((contact, index) => {
    const now = change(contact, index);
    if (now !== contact) changed = true;
    return now;
  });
  return changed ? { ...plan, switches } : undefined;
}

export function withMechanisms(
  plan: Plan,
  change: (mechanism: PlanMechanism, index: number) => PlanMechanism,
): Plan | undefined {
  let changed = false;
  const mechanisms = plan.mechanisms.map((mechanism, index) => {
    const now = change(mechanism, index);
    if (now !== mechanism) changed = true;
    return now;
  });
  return changed ? { ...plan, mechanisms } : undefined;
}

export function withLoads(plan: Plan, change: (load: PlanLoad, index: number) => PlanLoad): Plan | undefined {
  let changed = false;
  const loads = plan.loads.map((load, index) => {
    const now = change(load, index);
    if (now !== load) changed = true;
    return now;
  });
  return changed ? { ...plan, loads } : undefined;
}

/** Coils by the mechanism they move; a latching relay has two. */
export function coilsByMechanism(plan: Plan): ReadonlyMap<number, readonly number[]> {
  const coils = new Map<number, number[]>();
  plan.loads.forEach(({ mechanism }, load) => {
    if (mechanism < 0) return;
    const list = coils.get(mechanism);
    if (list) list.push(load);
    else coils.set(mechanism, [load]);
  });
  return coils;
}

/** Designations of some devices. */
export const namesOf = (circuit: Circuit, is: (device: Device) => boolean): ReadonlySet<string> =>
  new Set(circuit.devices.flatMap((device) => (is(device) ? [device.name] : [])));

/** Contacts that the plant itself moves. */
export const fieldDevices = (circuit: Circuit): ReadonlySet<string> =>
  namesOf(circuit, (device) => traitsOf(device).movedBy === 'plant');
