/** What has a coil, or two, that moves contacts. */
import type { ContactSpec, Rating } from '../../../shared/circuit.ts';
import { type CoilLimits, relayLimits, type Speeds, TYPICAL_WATTS } from '../standards.ts';
import { contactsOf, terminalsOf } from './contacts.ts';
import type { Anatomy, Drive, Load, LoadRole } from './types.ts';

const POSITIONS = ['rest', 'operated'];

export interface Coil {
  readonly rating: Rating;
  readonly watts: number;
  readonly limits: CoilLimits;
}

const winding = (role: LoadRole, from: string, to: string, { rating, watts, limits }: Coil): Load => ({
  from,
  to,
  role,
  ohms: (rating.volts * rating.volts) / watts,
  volts: rating.volts,
  current: rating.current,
  mechanism: 0,
  limits,
});

type Winding = readonly [role: LoadRole, from: string, to: string];

const ONE_COIL: readonly Winding[] = [['coil', 'A1', 'A2']];
/** What has two: the first is what it is asked by. */
const WINDINGS: { readonly [D in Drive]?: readonly Winding[] } = {
  latch: [
    ['set', 'A1', 'A2'],
    ['reset', 'B1', 'B2'],
  ],
  'supplied-off-delay': [
    ['control', 'B1', 'A2'],
    ['supply', 'A1', 'A2'],
  ],
};

interface CoilDevice {
  readonly name: string;
  readonly drive: Drive;
  readonly speeds: Speeds;
  readonly delays?: readonly number[];
  readonly coil: Coil;
  readonly mains?: readonly ContactSpec[];
  readonly auxiliaries: readonly ContactSpec[];
  /** A weld in one of its makes keeps every break open. */
  readonly linked?: boolean;
}

export function coilDevice({
  name,
  drive,
  speeds,
  delays = [],
  coil,
  mains = [],
  auxiliaries,
  linked = false,
}: CoilDevice): Anatomy {
  const placed = (specs: readonly ContactSpec[], main: boolean, after: number) =>
    specs.flatMap((spec, index) =>
      contactsOf(spec, { mechanism: 0, pole: after + index + 1, main, positions: POSITIONS }),
    );
  const windings = WINDINGS[drive] ?? ONE_COIL;
  return {
    terminals: [
      ...new Set(['A1', 'A2', ...windings.flatMap(([, from, to]) => [from, to])]),
      ...terminalsOf(mains),
      ...terminalsOf(auxiliaries),
    ],
    mechanisms: [
      {
        id: name,
        drive,
        positions: POSITIONS,
        live: 0,
        speeds,
        delays,
        protects: false,
        ...(linked ? { linked } : {}),
      },
    ],
    contacts: [...placed(mains, true, 0), ...placed(auxiliaries, false, mains.length)],
    loads: windings.map(([role, from, to]) => winding(role, from, to, coil)),
  };
}

export const relayCoil = (rating: Rating, watts: number = TYPICAL_WATTS.relay): Coil => ({
  rating,
  watts,
  limits: relayLimits(rating.current),
});
