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
  const latching = drive === 'latch';
  return {
    terminals: [
      'A1',
      'A2',
      ...(latching ? ['B1', 'B2'] : []),
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
    loads: latching
      ? [winding('set', 'A1', 'A2', coil), winding('reset', 'B1', 'B2', coil)]
      : [winding('coil', 'A1', 'A2', coil)],
  };
}

export const relayCoil = (rating: Rating, watts: number = TYPICAL_WATTS.relay): Coil => ({
  rating,
  watts,
  limits: relayLimits(rating.current),
});
