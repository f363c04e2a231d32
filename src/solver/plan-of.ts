import type { Circuit, Supply, TerminalRef } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import {
  type Anatomy,
  anatomyOf,
  type Contact,
  type Load,
  loadId,
  supplyTerminals,
} from '../circuit/anatomy/index.ts';
import { type Nodes, nodesOf, type OpenPlace } from './conductors.ts';
import { FaultyParts } from './faulty-parts.ts';
import type { Plan, PlanLoad, PlanMechanism, PlanPole, PlanSupply, PlanSwitch } from './plan.ts';

/** Potentials of a supply's poles against its return, which comes last. */
function polesOf(supply: Supply, nodeOf: ReadonlyMap<TerminalRef, number>): PlanPole[] {
  const terminals = supplyTerminals(supply);
  return terminals.map((terminal, index) => {
    const node = nodeOf.get(`${supply.name}:${terminal}`)!;
    if (index === terminals.length - 1) return { terminal, node, direct: 0, re: 0, im: 0 };
    if (supply.current === 'DC') return { terminal, node, direct: supply.volts, re: 0, im: 0 };
    if (supply.current === 'AC') return { terminal, node, direct: 0, re: supply.volts, im: 0 };
    const angle = (-2 * Math.PI * index) / 3;
    const star = supply.volts / Math.sqrt(3);
    return { terminal, node, direct: 0, re: star * Math.cos(angle), im: star * Math.sin(angle) };
  });
}

/** Circuits planned last: one is planned for its machine, its rules, its canonical form and its question in turn. */
const latest: { readonly circuit: Circuit; readonly faults: readonly Fault[]; readonly plan: Plan }[] = [];
const KEPT = 4;
const NO_FAULTS: readonly Fault[] = [];

/**
 * The plan of a sound circuit with `faults` in it. A fault that names what the circuit hasn't got has no effect:
 * the reader of faults refuses it before. Neither circuits nor lists of faults are ever changed once made, so what comes again has
 * its plan.
 */
export function planOf(circuit: Circuit, listed: readonly Fault[] = NO_FAULTS): Plan {
  const faults = listed.length === 0 ? NO_FAULTS : listed;
  for (const known of latest) if (known.circuit === circuit && known.faults === faults) return known.plan;
  const plan = planned(circuit, faults);
  if (latest.unshift({ circuit, faults, plan }) > KEPT) latest.pop();
  return plan;
}

function mechanismsOf(device: string, { mechanisms }: Anatomy, faulty: FaultyParts): PlanMechanism[] {
  const stuck = faulty.device('stuck', device);
  const blown = faulty.device('blown', device);
  return mechanisms.map((mechanism) => ({
    ...mechanism,
    device,
    ...(stuck ? { frozenAt: 0 } : {}),
    ...(blown ? { live: 1 - mechanism.live } : {}),
  }));
}

/** Whether a contact can't close because another one of its device is welded. */
function isBlocked({ mechanisms }: Anatomy, contact: Contact, welded: readonly Contact[]): boolean {
  // A welded leg keeps its changeover's other leg open; with mechanically linked contacts a weld in a make keeps every
  // break contact open (mirror contacts, IEC 60947-4-1 annex F, from memory). Other poles of a relay move freely.
  const { linked = false } = mechanisms[contact.mechanism]!;
  return welded.some(
    (weld) =>
      weld !== contact &&
      weld.form !== contact.form &&
      (weld.pole === contact.pole || (linked && weld.form === 'make')),
  );
}

/** The resistance of a dirty contact, between it and the terminal it leads to. */
const dirt = (device: string, { from, to }: Contact, a: number, b: number, ohms: number): PlanLoad => ({
  id: `${device}:${from}-${to}`,
  device,
  from,
  to,
  a,
  b,
  role: 'dirt',
  siemens: 1 / ohms,
  volts: 0,
  mechanism: -1,
  dead: false,
});

/** A loose terminal or a cut wire: a switch that is open for good. */
function openSwitch({ at, a, b }: OpenPlace): PlanSwitch {
  const [device = '', terminal = ''] = at.split(':');
  return {
    device,
    from: terminal,
    to: terminal,
    a,
    b,
    mechanism: -1,
    closedIn: [],
    form: 'make',
    pole: 0,
    changeover: false,
    main: false,
    fixed: 'open',
  };
}

/** The lists of a plan while devices are added to them one by one. */
class Planning {
  readonly mechanisms: PlanMechanism[] = [];
  readonly switches: PlanSwitch[] = [];
  readonly loads: PlanLoad[] = [];
  readonly joins: [number, number][] = [];
  count: number;
  private readonly nodes: Nodes;
  private readonly faulty: FaultyParts;

  constructor(nodes: Nodes, faulty: FaultyParts) {
    this.nodes = nodes;
    this.faulty = faulty;
    this.count = nodes.count;
  }

  /** Adds a device; `place` is where it stands in the circuit's list. */
  add(name: string, anatomy: Anatomy, place: number): void {
    const offset = this.mechanisms.length;
    this.mechanisms.push(...mechanismsOf(name, anatomy, this.faulty));
    this.addContacts(name, anatomy, place, offset);
    for (const load of anatomy.loads) this.addLoad(name, load, place, offset);
  }

  private addContacts(name: string, anatomy: Anatomy, place: number, offset: number): void {
    const { nodes, faulty, switches, loads } = this;
    const welded = anatomy.contacts.filter(({ from, to }) => faulty.between('welded', name, from, to));
    for (const contact of anatomy.contacts) {
      const { from, to, closedIn, form, pole, changeover, main } = contact;
      const a = nodes.nodeAt(place, from);
      let b = nodes.nodeAt(place, to);
      const dirty = faulty.between('dirty', name, from, to);
      if (dirty) {
        loads.push(dirt(name, contact, this.count, b, dirty.ohms));
        b = this.count++;
      }
      const mechanism = offset + contact.mechanism;
      const part = { device: name, from, to, a, b, mechanism, closedIn, form, pole, changeover, main };
      if (welded.includes(contact)) switches.push({ ...part, fixed: 'closed' });
      else if (isBlocked(anatomy, contact, welded)) switches.push({ ...part, fixed: 'open' });
      else switches.push(part);
    }
  }

  private addLoad(name: string, load: Load, place: number, offset: number): void {
    const { from, to, role, ohms, volts, mechanism, limits, bands } = load;
    const a = this.nodes.nodeAt(place, from);
    const b = this.nodes.nodeAt(place, to);
    const burnt = this.faulty.between('open', name, from, to) !== undefined;
    if (this.faulty.between('shorted', name, from, to)) this.joins.push([a, b]);
    this.loads.push({
      id: loadId(name, load),
      device: name,
      from,
      to,
      a,
      b,
      role,
      siemens: burnt ? 0 : 1 / ohms,
      volts,
      dead: burnt,
      mechanism: mechanism === undefined ? -1 : offset + mechanism,
      ...(limits ? { limits } : {}),
      ...(bands ? { bands } : {}),
    });
  }
}

function planned(circuit: Circuit, faults: readonly Fault[]): Plan {
  const anatomies = circuit.devices.map(anatomyOf);
  const nodes = nodesOf(circuit, anatomies, faults);
  const planning = new Planning(nodes, new FaultyParts(faults));
  circuit.devices.forEach(({ name }, place) => {
    planning.add(name, anatomies[place]!, place);
  });
  const { mechanisms, switches, loads, joins, count } = planning;
  switches.push(...nodes.open.map(openSwitch));
  const supplies: PlanSupply[] = circuit.supplies.map((supply) => ({
    name: supply.name,
    supply,
    poles: polesOf(supply, nodes.nodeOf),
    earthed: supply.earthed,
  }));
  return { nodes: count, nodeOf: nodes.nodeOf, joins, supplies, switches, loads, mechanisms };
}
