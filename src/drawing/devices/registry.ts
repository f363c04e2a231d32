/**
 * Every kind of device as it is drawn, a line each. Letters: old practice (IEC 60750) has H lamp, K relay and contactor, S control
 * switch, F protection, miniature circuit-breakers too, Y valve, M motor, B sensor; IEC 81346-2 has P lamp and sounder, K relay, Q power contactor
 * and isolator, S control switch, B sensor, F protection, M motor and valve, X terminal. First letters; second ones are left off.
 */
import type { Device, DeviceKind, DeviceOf } from '../../../shared/circuit.ts';
import type { Anatomy, Contact } from '../../circuit/anatomy/index.ts';
import type { RatingSaid } from '../../words/index.ts';
import { bottom, type PartForm, type PartPlan, top } from '../parts/part.ts';
import type { DrawnTraits } from './traits.ts';

const always = (letter: string) => () => letter;
const either = (before: string, now: string) => (_: unknown, letters: 'old' | 'new') =>
  letters === 'old' ? before : now;

const main =
  (form: PartForm) =>
  (contact: Contact): PartForm | undefined =>
    contact.main ? form : undefined;

const amps = ({ amps: rated }: DeviceOf<'fuse' | 'breaker'>): RatingSaid | undefined =>
  rated ? { says: 'amps', amps: rated } : undefined;
const time = ({ seconds }: DeviceOf<'on-delay' | 'off-delay' | 'supplied-off-delay'>): RatingSaid => ({
  says: 'time',
  seconds,
});
const colour = ({ colour: shown }: DeviceOf<'lamp' | 'push-button'>): RatingSaid | undefined =>
  shown && { says: 'colour', colour: shown };

/** U1 V1 W1 side by side above; with both ends brought out, U2 V2 W2 below. */
const windings = ({ terminals }: Anatomy): PartPlan => ({
  form: 'motor',
  ways: [],
  spots: terminals.map((terminal, index) => (index < 3 ? top(terminal, index) : bottom(terminal, index - 3))),
});

export const DRAWN: { readonly [K in DeviceKind]: DrawnTraits<K> } = {
  relay: { letter: always('K') },
  contactor: { letter: ({ mains }, letters) => (letters === 'old' || mains === 0 ? 'K' : 'Q') },
  'on-delay': { letter: always('K'), delay: 'operate', rating: time },
  'off-delay': { letter: always('K'), delay: 'release', rating: time },
  'supplied-off-delay': { letter: always('K'), delay: 'release', rating: time },
  flasher: {
    letter: always('K'),
    delay: 'pulse',
    rating: ({ on, off }) => ({ says: 'onAndOff', on, off }),
  },
  'latching-relay': { letter: always('K') },
  'push-button': { letter: always('S'), actuator: 'push', rating: colour },
  'emergency-stop': { letter: always('S'), actuator: 'mushroom' },
  selector: { letter: always('S'), actuator: 'turn', positions: ({ positions }) => positions },
  'field-contact': { letter: always('B'), actuator: 'field' },
  'limit-switch': { letter: always('B'), actuator: 'limit' },
  'float-switch': { letter: always('B'), actuator: 'float' },
  overload: { letter: always('F'), actuator: 'trip', pole: main('heater') },
  fuse: { letter: always('F'), pole: main('fuse'), rating: amps },
  breaker: { letter: always('F'), pole: main('breaker-pole'), rating: amps },
  isolator: { letter: always('Q'), pole: main('isolator-pole') },
  lamp: { letter: either('H', 'P'), load: 'lamp', rating: colour },
  sounder: { letter: either('H', 'P'), load: 'sounder' },
  valve: { letter: either('Y', 'M'), load: 'valve' },
  motor: { letter: always('M'), whole: windings },
  inputs: { letter: always('A'), load: 'input' },
  outputs: {
    letter: always('A'),
    pole: () => 'output',
    poleText: ({ points }, [first]) => points[(first?.pole ?? 0) - 1] || undefined,
  },
  terminals: { letter: always('X') },
};

/** How a device is drawn; used with devices of the same kind. */
export const drawnAs = (device: Device): DrawnTraits<DeviceKind> => DRAWN[device.kind] as never;
