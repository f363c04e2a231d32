import type { ContactSpec, DeviceOf, Rating } from '../../../shared/circuit.ts';
import {
  type CoilLimits,
  contactorLimits,
  relayLimits,
  SPEEDS,
  type Speeds,
  TYPICAL_WATTS,
} from '../standards.ts';
import { changeoverPoles, contactsOf, mainPoles, terminalsOf } from './contacts.ts';
import type { Anatomy, Drive, Load, LoadRole } from './types.ts';

const POSITIONS = ['rest', 'operated'];

interface Coil {
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

interface Build {
  readonly name: string;
  readonly drive: Drive;
  readonly speeds: Speeds;
  readonly delays?: readonly number[];
  readonly coil: Coil;
  readonly mains?: readonly ContactSpec[];
  readonly auxiliaries: readonly ContactSpec[];
}

function build({ name, drive, speeds, delays = [], coil, mains = [], auxiliaries }: Build): Anatomy {
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
    mechanisms: [{ id: name, drive, positions: POSITIONS, live: 0, speeds, delays, protects: false }],
    contacts: [...placed(mains, true, 0), ...placed(auxiliaries, false, mains.length)],
    loads: latching
      ? [winding('set', 'A1', 'A2', coil), winding('reset', 'B1', 'B2', coil)]
      : [winding('coil', 'A1', 'A2', coil)],
  };
}

const relayCoil = (rating: Rating, watts: number = TYPICAL_WATTS.relay): Coil => ({
  rating,
  watts,
  limits: relayLimits(rating.current),
});

export const relayAnatomy = (device: DeviceOf<'relay'>): Anatomy =>
  build({
    name: device.name,
    drive: 'coil',
    speeds: SPEEDS.relay,
    coil: relayCoil(device.rating),
    auxiliaries: changeoverPoles(device.poles),
  });

export const latchingAnatomy = (device: DeviceOf<'latching-relay'>): Anatomy =>
  build({
    name: device.name,
    drive: 'latch',
    speeds: SPEEDS.relay,
    coil: relayCoil(device.rating),
    auxiliaries: changeoverPoles(device.poles),
  });

export const contactorAnatomy = (device: DeviceOf<'contactor'>): Anatomy =>
  build({
    name: device.name,
    drive: 'coil',
    speeds: SPEEDS.contactor,
    coil: {
      rating: device.rating,
      watts: TYPICAL_WATTS.contactor,
      limits: contactorLimits(device.rating.current),
    },
    mains: mainPoles(device.mains),
    auxiliaries: device.contacts,
  });

export const timerAnatomy = (device: DeviceOf<'on-delay' | 'off-delay' | 'flasher'>): Anatomy =>
  build({
    name: device.name,
    drive: device.kind,
    speeds: SPEEDS.timer,
    delays: device.kind === 'flasher' ? [device.on, device.off] : [device.seconds],
    coil: relayCoil(device.rating, TYPICAL_WATTS.timer),
    auxiliaries: changeoverPoles(device.poles, true),
  });
