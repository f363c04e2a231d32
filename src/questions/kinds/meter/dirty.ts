/** Contacts that take a part of the voltage, and the readings from which that part is known. */
import type { Circuit, TerminalRef } from '../../../../shared/circuit.ts';
import type { Fault, Scenario } from '../../../../shared/scenario.ts';
import { readAs } from '../../../circuit/index.ts';
import type { Random } from '../../../generator/index.ts';
import { isClosed, meterIn } from '../../../solver/index.ts';
import type { Standpoint } from '../../solving.ts';

type Stands = Pick<Standpoint, 'machine' | 'state'>;

/** Contacts out of order at a time, at most. */
const MOST = 2;
/** Parts of the voltage that a load keeps, the contact before it taking the rest. */
const KEPT = [0.25, 0.35, 0.5, 0.65, 0.75];

const ref = (device: string, terminal: string): TerminalRef => `${device}:${terminal}`;

/** Closed contacts of relays drawn on one line with a lamp or an input that is fed, and what the load's resistance is. */
function beforeFed(
  { paths }: Circuit,
  { machine, state, readings: { lamps, inputs } }: Standpoint,
): { from: TerminalRef; to: TerminalRef; ohms: number }[] {
  const { plan } = machine;
  return paths.flatMap(({ steps }) => {
    const load = plan.loads.find(
      ({ id, role }) =>
        role !== 'dirt' &&
        (lamps[id] === 'lit' || inputs[id] === '1') &&
        steps.some(({ device, enter }) => id === device || id === `${device}:${enter}`),
    );
    if (!load) return [];
    return steps.flatMap(({ device, enter, leave = '' }) =>
      plan.switches.flatMap((contact, index) => {
        const { from, to, mechanism } = contact;
        const drive = plan.mechanisms[mechanism]?.drive;
        if (contact.device !== device || drive === undefined || drive === 'feed' || drive === 'act')
          return [];
        if (![from, to].includes(enter) || ![from, to].includes(leave)) return [];
        if (!isClosed(machine, state.at, index)) return [];
        return [{ from: ref(device, from), to: ref(device, to), ohms: 1 / load.siemens }];
      }),
    );
  });
}

/** To two digits, as a resistance is told. */
const rounded = (ohms: number): number => Number(ohms.toPrecision(2));

/** Up to two contacts with a resistance beside which the load behind keeps a part of its voltage. */
export function dirtyContacts(circuit: Circuit, standpoint: Standpoint, random: Random): Fault[] {
  const found = random.shuffle(beforeFed(circuit, standpoint));
  const faults = new Map<string, Fault>();
  for (const { from, to, ohms } of found) {
    if (faults.size >= MOST) break;
    const kept = random.pick(KEPT);
    if (!faults.has(from))
      faults.set(from, { kind: 'dirty', from, to, ohms: rounded((ohms * (1 - kept)) / kept) });
  }
  return [...faults.values()];
}

export interface Known {
  readonly points: readonly [TerminalRef, TerminalRef];
  readonly volts: number;
}

/** What is read across each load that gets a part of its voltage over a dirty contact: who has that works out the rest. */
export function knownReadings({ faults }: Scenario, { machine, state }: Stands): Known[] {
  if (!faults.some(({ kind }) => kind === 'dirty')) return [];
  const read = meterIn(machine, state);
  return machine.plan.loads.flatMap(({ device, from, to, role, volts: whole }): Known[] => {
    if (role === 'dirt' || !['lamp', 'input'].includes(readAs(role))) return [];
    const points = [ref(device, from), ref(device, to)] as const;
    const { volts, floating } = read(...points);
    const part = Math.abs(volts) / whole;
    return !floating && part > 0.02 && part < 0.98
      ? [{ points, volts: Number(Math.abs(volts).toFixed(2)) }]
      : [];
  });
}
