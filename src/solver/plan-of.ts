import type { Circuit, Supply } from '../../shared/circuit.ts';
import type { Fault } from '../../shared/scenario.ts';
import { type Anatomy, anatomyOf, readAs, supplyTerminals } from '../circuit/anatomy/index.ts';
import { Joining } from '../graph/index.ts';
import type { Plan, PlanLoad, PlanMechanism, PlanPole, PlanSupply, PlanSwitch } from './plan.ts';

/** Only faults of the wiring concern the numbering of conductors; the others change parts. */
interface WiringFaults {
  readonly loose: ReadonlySet<string>;
  readonly cut: ReadonlySet<string>;
  readonly crossed: ReadonlyMap<string, string>;
}

const wire = (one: string, other: string): string => (one < other ? `${one} ${other}` : `${other} ${one}`);

function wiringFaults(faults: readonly Fault[]): WiringFaults {
  const crossed = new Map<string, string>();
  for (const fault of faults) {
    if (fault.kind === 'crossed') {
      crossed.set(fault.one, fault.other);
      crossed.set(fault.other, fault.one);
    }
  }
  return {
    loose: new Set(faults.flatMap((fault) => (fault.kind === 'loose' ? [fault.at] : []))),
    cut: new Set(faults.flatMap((fault) => (fault.kind === 'cut' ? [wire(fault.from, fault.to)] : []))),
    crossed,
  };
}

/**
 * Numbers the conductors: terminals that wires join share a node. A loose terminal is a node of its own, and so is each
 * side of a cut wire; `openPlaces` are the pairs of terminals that such a fault keeps apart.
 */
function conductors(circuit: Circuit, anatomies: readonly Anatomy[], faults: WiringFaults) {
  // Each terminal is two points: the device's own terminal, and the end of the conductors that come to it.
  const own = new Map<string, number>();
  for (const supply of circuit.supplies)
    for (const t of supplyTerminals(supply)) own.set(`${supply.name}:${t}`, own.size);
  circuit.devices.forEach((device, index) => {
    for (const terminal of anatomies[index]!.terminals) own.set(`${device.name}:${terminal}`, own.size);
    for (const load of anatomies[index]!.loads) {
      const inner = `${device.name}:${load.to}`;
      if (!own.has(inner)) own.set(inner, own.size);
    }
  });
  const count = own.size;
  const joining = new Joining(2 * count);
  const openPlaces: { at: string; from: number; to: number }[] = [];
  const wiresEnd = (terminal: string): number => count + own.get(terminal)!;
  for (const terminal of own.keys()) {
    const carried = wiresEnd(faults.crossed.get(terminal) ?? terminal);
    if (faults.loose.has(terminal)) openPlaces.push({ at: terminal, from: own.get(terminal)!, to: carried });
    else joining.join(own.get(terminal)!, carried);
  }
  for (const path of circuit.paths) {
    for (let index = 1; index < path.steps.length; index++) {
      const before = path.steps[index - 1]!;
      const after = path.steps[index]!;
      const from = `${before.device}:${before.leave ?? before.enter}`;
      const to = `${after.device}:${after.enter}`;
      if (faults.cut.has(wire(from, to)))
        openPlaces.push({ at: from, from: wiresEnd(from), to: wiresEnd(to) });
      else joining.join(wiresEnd(from), wiresEnd(to));
    }
  }
  const numbers = new Map<number, number>();
  const nodeAt = (point: number): number => {
    const root = joining.find(point);
    const known = numbers.get(root);
    if (known !== undefined) return known;
    numbers.set(root, numbers.size);
    return numbers.size - 1;
  };
  const nodeOf = new Map<string, number>();
  for (const [terminal, point] of own) nodeOf.set(terminal, nodeAt(point));
  const open = openPlaces.map(({ at, from, to }) => ({ at, a: nodeAt(from), b: nodeAt(to) }));
  let next = numbers.size;
  return { nodeOf, open, count: () => next, fresh: () => next++ };
}

/** Potentials of a supply's poles against its return, which comes last. */
function polesOf(supply: Supply, nodeOf: ReadonlyMap<string, number>): PlanPole[] {
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

const loadId = (device: string, load: Anatomy['loads'][number]): string => {
  if (load.role === 'input') return `${device}:${load.point}`;
  if (load.role === 'reset' || readAs(load.role) === 'winding') return `${device}:${load.from}`;
  return device;
};

/** Sound circuits planned last: one is planned for its machine, its rules, its canonical form and its question in turn. */
const latest: { readonly circuit: Circuit; readonly plan: Plan }[] = [];
const KEPT = 4;

/**
 * The plan of a sound circuit with `faults` in it. A fault that names what the circuit hasn't got has no effect:
 * the reader of faults refuses it before. Circuits are never changed once made, so one that comes again has its plan.
 */
export function planOf(circuit: Circuit, faults: readonly Fault[] = []): Plan {
  if (faults.length > 0) return planned(circuit, faults);
  const known = latest.find((each) => each.circuit === circuit);
  if (known) return known.plan;
  const plan = planned(circuit, faults);
  if (latest.unshift({ circuit, plan }) > KEPT) latest.pop();
  return plan;
}

function planned(circuit: Circuit, faults: readonly Fault[]): Plan {
  const anatomies = circuit.devices.map(anatomyOf);
  const { nodeOf, open, count, fresh } = conductors(circuit, anatomies, wiringFaults(faults));
  const mechanisms: PlanMechanism[] = [];
  const switches: PlanSwitch[] = [];
  const loads: PlanLoad[] = [];
  const joins: [number, number][] = [];
  const between = (fault: Fault, device: string, from: string, to: string): boolean =>
    'from' in fault &&
    ((fault.from === `${device}:${from}` && fault.to === `${device}:${to}`) ||
      (fault.to === `${device}:${from}` && fault.from === `${device}:${to}`));

  circuit.devices.forEach((device, index) => {
    const anatomy = anatomies[index]!;
    const offset = mechanisms.length;
    for (const mechanism of anatomy.mechanisms) {
      const stuck = faults.some((fault) => fault.kind === 'stuck' && fault.device === device.name);
      const blown = faults.some((fault) => fault.kind === 'blown' && fault.device === device.name);
      mechanisms.push({
        ...mechanism,
        device: device.name,
        ...(stuck ? { frozenAt: 0 } : {}),
        ...(blown ? { live: 1 - mechanism.live } : {}),
      });
    }
    const welded = anatomy.contacts.filter((contact) =>
      faults.some(
        (fault) => fault.kind === 'welded' && between(fault, device.name, contact.from, contact.to),
      ),
    );
    for (const contact of anatomy.contacts) {
      const a = nodeOf.get(`${device.name}:${contact.from}`)!;
      let b = nodeOf.get(`${device.name}:${contact.to}`)!;
      const dirty = faults.find(
        (fault) => fault.kind === 'dirty' && between(fault, device.name, contact.from, contact.to),
      );
      if (dirty?.kind === 'dirty') {
        const inner = fresh();
        loads.push({
          id: `${device.name}:${contact.from}-${contact.to}`,
          device: device.name,
          from: contact.from,
          to: contact.to,
          a: inner,
          b,
          role: 'dirt',
          siemens: 1 / dirty.ohms,
          volts: 0,
          mechanism: -1,
          dead: false,
        });
        b = inner;
      }
      // A welded leg keeps its changeover's other leg open; with mechanically linked contacts a weld in a make keeps every
      // break contact open (mirror contacts, IEC 60947-4-1 annex F, from memory). Other poles of a relay move freely.
      const blocked = welded.some(
        (weld) =>
          weld !== contact &&
          weld.form !== contact.form &&
          (weld.pole === contact.pole ||
            (anatomy.mechanisms[contact.mechanism]!.linked && weld.form === 'make')),
      );
      switches.push({
        ...contact,
        device: device.name,
        a,
        b,
        mechanism: offset + contact.mechanism,
        ...(welded.includes(contact)
          ? { fixed: 'closed' as const }
          : blocked
            ? { fixed: 'open' as const }
            : {}),
      });
    }
    for (const load of anatomy.loads) {
      const a = nodeOf.get(`${device.name}:${load.from}`)!;
      const b = nodeOf.get(`${device.name}:${load.to}`)!;
      const burnt = faults.some(
        (fault) => fault.kind === 'open' && between(fault, device.name, load.from, load.to),
      );
      if (faults.some((fault) => fault.kind === 'shorted' && between(fault, device.name, load.from, load.to)))
        joins.push([a, b]);
      const { ohms, mechanism, limits, bands } = load;
      loads.push({
        id: loadId(device.name, load),
        device: device.name,
        from: load.from,
        to: load.to,
        a,
        b,
        role: load.role,
        siemens: burnt ? 0 : 1 / ohms,
        volts: load.volts,
        dead: burnt,
        mechanism: mechanism === undefined ? -1 : offset + mechanism,
        ...(limits ? { limits } : {}),
        ...(bands ? { bands } : {}),
      });
    }
  });
  for (const { at, a, b } of open) {
    const [device = '', terminal = ''] = at.split(':');
    switches.push({
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
    });
  }
  const supplies: PlanSupply[] = circuit.supplies.map((supply) => ({
    name: supply.name,
    supply,
    poles: polesOf(supply, nodeOf),
    earthed: supply.earthed,
  }));
  return { nodes: count(), nodeOf, joins, supplies, switches, loads, mechanisms };
}
