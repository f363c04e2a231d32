/** The parts a device could be drawn as, from its anatomy: one for each pole, coil, load, point and terminal. */
import type { Device } from '../../../shared/circuit.ts';
import { type Anatomy, anatomyOf, type Contact, type Load } from '../../circuit/anatomy/index.ts';
import type { Actuator, Delay, PartForm, PartPlan, Spot, Way } from './part.ts';

const top = (terminal: string, dx = 0): Spot => ({ terminal, side: 'top', dx });
const bottom = (terminal: string, dx = 0): Spot => ({ terminal, side: 'bottom', dx });

function actuatorOf(device: Device): Actuator | undefined {
  switch (device.kind) {
    case 'push-button':
      return 'push';
    case 'emergency-stop':
      return 'mushroom';
    case 'selector':
      return 'turn';
    case 'field-contact':
      return 'field';
    case 'limit-switch':
      return 'limit';
    case 'float-switch':
      return 'float';
    case 'overload':
      return 'trip';
    default:
      return undefined;
  }
}

function delayOf(device: Device): Delay | undefined {
  switch (device.kind) {
    case 'on-delay':
      return 'operate';
    case 'off-delay':
      return 'release';
    case 'flasher':
      return 'pulse';
    default:
      return undefined;
  }
}

function poleForm(device: Device, contact: Contact): PartForm {
  if (contact.changeover) return 'changeover';
  if (!contact.main) return contact.form;
  switch (device.kind) {
    case 'fuse':
      return 'fuse';
    case 'breaker':
      return 'breaker-pole';
    case 'isolator':
      return 'isolator-pole';
    case 'overload':
      return 'heater';
    default:
      return contact.form === 'make' ? 'main-make' : 'main-break';
  }
}

/** A selector's contact names the positions it is closed in; with two positions the drawn blade says enough. */
const positionsText = (device: Device, legs: readonly Contact[]): string | undefined => {
  const [first] = legs;
  if (device.kind !== 'selector' || !first || first.changeover) return undefined;
  return first.closedIn.map((index) => device.positions[index] ?? '').join(' ');
};

const wayOf = ({ from, to, closedIn }: Contact): Way => ({ from, to, closedIn });

function polePlan(device: Device, anatomy: Anatomy, legs: readonly Contact[]): PartPlan {
  const first = legs[0] as Contact;
  const mechanism = anatomy.mechanisms[first.mechanism]?.id;
  const form = device.kind === 'outputs' ? 'output' : poleForm(device, first);
  const spots =
    form === 'changeover'
      ? [top(first.from), bottom(first.to, -1), bottom(legs[1]?.to ?? '', 1)]
      : [top(first.from), bottom(first.to)];
  const actuator = form === 'heater' ? undefined : actuatorOf(device);
  const delay = delayOf(device);
  const text =
    device.kind === 'outputs' ? device.points[first.pole - 1] || undefined : positionsText(device, legs);
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
  switch (load.role) {
    case 'coil':
    case 'set':
    case 'reset': {
      const delay = delayOf(device);
      return {
        form: 'coil',
        spots,
        ways,
        ...(mechanism ? { mechanism } : {}),
        ...(delay ? { delay } : {}),
        ...(load.role === 'coil' ? {} : { latch: load.role }),
      };
    }
    case 'lamp':
    case 'sounder':
    case 'valve':
    case 'input':
      return { form: load.role, spots, ways, ...(load.text ? { text: load.text } : {}) };
    case 'motor':
      throw new RangeError('a motor is one part, not one for each winding');
  }
}

/** U1 V1 W1 side by side above; with both ends brought out, U2 V2 W2 below. */
const motorPlan = (anatomy: Anatomy): PartPlan => ({
  form: 'motor',
  ways: [],
  spots: anatomy.terminals.map((terminal, index) =>
    index < 3 ? top(terminal, index) : bottom(terminal, index - 3),
  ),
});

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

/** Devices never change, and are drawn again and again: at other widths, in other states. */
const planned = new WeakMap<Device, readonly PartPlan[]>();

/** Everything a device could be drawn as, in the order of its anatomy. */
export function plansOf(device: Device): readonly PartPlan[] {
  let plans = planned.get(device);
  if (!plans) {
    plans = makePlans(device);
    planned.set(device, plans);
  }
  return plans;
}

function makePlans(device: Device): PartPlan[] {
  const anatomy = anatomyOf(device);
  if (device.kind === 'terminals')
    return anatomy.terminals.map((terminal) => ({
      form: 'terminal',
      ways: [],
      spots: [top(terminal), bottom(terminal)],
    }));
  if (device.kind === 'motor') return [motorPlan(anatomy)];
  const plans = [
    ...anatomy.loads.map((load) => loadPlan(device, anatomy, load)),
    ...polesOf(anatomy.contacts).map((legs) => polePlan(device, anatomy, legs)),
  ];
  if (device.kind === 'inputs') plans.push({ form: 'common', ways: [], spots: [bottom('COM')] });
  if (device.kind === 'outputs') plans.push({ form: 'common', ways: [], spots: [top('COM')] });
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
