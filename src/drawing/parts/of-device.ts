/** The parts a device could be drawn as, from its anatomy: one for each pole, coil, load, point and terminal. */
import type { Device } from '../../../shared/circuit.ts';
import {
  type Anatomy,
  anatomyOf,
  type Contact,
  type Load,
  loadId,
  readAs,
} from '../../circuit/anatomy/index.ts';
import { once } from '../../graph/index.ts';
import { drawnAs } from '../devices/registry.ts';
import { bottom, type PartForm, type PartPlan, type Spot, top, type Way } from './part.ts';

function poleForm(device: Device, contact: Contact): PartForm {
  const form = drawnAs(device).pole?.(contact);
  if (form) return form;
  if (contact.changeover) return 'changeover';
  if (!contact.main) return contact.form;
  return contact.form === 'make' ? 'main-make' : 'main-break';
}

const wayOf = ({ from, to, closedIn }: Contact): Way => ({ from, to, closedIn });

function polePlan(device: Device, anatomy: Anatomy, legs: readonly Contact[]): PartPlan {
  const first = legs[0] as Contact;
  const mechanism = anatomy.mechanisms[first.mechanism]?.id;
  const form = poleForm(device, first);
  const spots =
    form === 'changeover'
      ? [top(first.from), bottom(first.to, -1), bottom(legs[1]?.to ?? '', 1)]
      : [top(first.from), bottom(first.to)];
  const { delay, poleText, ...drawn } = drawnAs(device);
  const actuator = form === 'heater' ? undefined : drawn.actuator;
  const text = poleText?.(device, legs);
  return {
    form,
    spots,
    ways: legs.map(wayOf),
    ...(mechanism ? { mechanism } : {}),
    ...(actuator ? { actuator } : {}),
    ...(delay ? { delay } : {}),
    ...(text ? { text } : {}),
  };
}

function loadPlan(device: Device, anatomy: Anatomy, load: Load): PartPlan {
  const spots = [top(load.from), bottom(load.to)];
  const mechanism = load.mechanism === undefined ? undefined : anatomy.mechanisms[load.mechanism]?.id;
  const ways: readonly Way[] = [];
  const { delay, load: form } = drawnAs(device);
  if (form && readAs(load.role) !== 'coil')
    return { form, spots, ways, ...(load.text ? { text: load.text } : {}) };
  return {
    form: 'coil',
    spots,
    ways,
    ...(mechanism ? { mechanism } : {}),
    ...(delay && load.role !== 'control' ? { delay } : {}),
    ...(load.role === 'set' || load.role === 'reset' || load.role === 'control'
      ? { winding: load.role }
      : {}),
    coil: loadId(device.name, load),
  };
}

function polesOf(contacts: readonly Contact[]): Contact[][] {
  const poles = new Map<number, Contact[]>();
  for (const contact of contacts) {
    const key = contact.mechanism * 100 + contact.pole;
    const pole = poles.get(key);
    if (pole) pole.push(contact);
    else poles.set(key, [contact]);
  }
  return [...poles.values()];
}

/**
 * Everything a device could be drawn as, in the order of its anatomy. Devices never change, and are drawn again and again: at other
 * widths, in other states.
 */
export const plansOf: (device: Device) => readonly PartPlan[] = once(makePlans);

function makePlans(device: Device): PartPlan[] {
  const anatomy = anatomyOf(device);
  const { terminals, loads, contacts, common } = anatomy;
  // What has neither contact nor load leads through.
  if (loads.length + contacts.length === 0)
    return terminals.map((terminal) => ({
      form: 'terminal',
      ways: [],
      spots: [top(terminal), bottom(terminal)],
    }));
  const whole = drawnAs(device).whole?.(anatomy);
  if (whole) return [whole];
  const plans = [
    ...loads.map((load) => loadPlan(device, anatomy, load)),
    ...polesOf(contacts).map((legs) => polePlan(device, anatomy, legs)),
  ];
  // Points share their common: outputs take the current from it, inputs give theirs to it.
  if (common)
    plans.push({ form: 'common', ways: [], spots: [loads.length > 0 ? bottom(common) : top(common)] });
  return plans;
}

/** A changeover of which only one leg is wired is drawn as the make or break that it then is; both, or neither: whole. */
export function trimmed(plan: PartPlan, used: (terminal: string) => boolean): PartPlan {
  if (plan.form !== 'changeover') return plan;
  const [common, rest, operated] = plan.spots as [Spot, Spot, Spot];
  const [restUsed, operatedUsed] = [used(rest.terminal), used(operated.terminal)];
  if (restUsed === operatedUsed) return plan;
  const leg = restUsed ? rest : operated;
  return {
    ...plan,
    form: restUsed ? 'break' : 'make',
    spots: [common, bottom(leg.terminal)],
    ways: plan.ways.filter((way) => way.to === leg.terminal),
  };
}
