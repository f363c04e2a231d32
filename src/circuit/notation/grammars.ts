/** Every kind of device in the notation, a line each, in the order in which kinds are listed. */
import type { DeviceKind } from '../../../shared/circuit.ts';
import { INPUT_BANDS } from '../standards.ts';
import {
  amps,
  CONTACTS_NEEDED,
  COUNT_NEEDED,
  colours,
  type Grammar,
  grammar,
  poles,
  rating,
  watts,
} from './grammar.ts';
import {
  auxiliaries,
  bareCount,
  contacts,
  delay,
  label,
  labelAndPoints,
  measure,
  oneOf,
  phase,
  positions,
} from './options.ts';

const relay = grammar([poles, rating, label], { poles: 1 });
const timer = grammar([delay, poles, rating, label], { poles: 1 }, { seconds: { says: 'delay' } });
const switched = grammar([contacts(), label], {}, CONTACTS_NEEDED);
const protective = grammar([poles, amps, label], { poles: 1 });
const load = grammar([watts, rating, label]);

export const GRAMMARS: Readonly<Record<DeviceKind, Grammar>> = {
  relay,
  contactor: grammar([measure('mains', 'main'), auxiliaries, rating, label], { mains: 3, contacts: [] }),
  'on-delay': timer,
  'off-delay': timer,
  'supplied-off-delay': timer,
  flasher: grammar(
    [phase('on'), phase('off'), poles, rating, label],
    { poles: 1 },
    { on: { says: 'on' }, off: { says: 'off' } },
  ),
  'latching-relay': relay,
  'push-button': grammar([contacts(), colours, label], {}, CONTACTS_NEEDED),
  'emergency-stop': switched,
  selector: grammar(
    [positions, contacts(true), label],
    {},
    { positions: { says: 'positions' }, ...CONTACTS_NEEDED },
  ),
  'field-contact': switched,
  'limit-switch': switched,
  'float-switch': switched,
  overload: grammar([label]),
  fuse: protective,
  breaker: protective,
  isolator: grammar([poles, label], { poles: 1 }),
  lamp: grammar([colours, watts, rating, label]),
  sounder: load,
  valve: load,
  motor: grammar(
    [measure('volts', 'V'), measure('terminals', 'terminals', 'terminals', 3), label],
    { terminals: 3 },
    { volts: { says: 'winding' } },
  ),
  inputs: grammar(
    [bareCount, oneOf('type', Object.keys(INPUT_BANDS)), labelAndPoints],
    { points: [] },
    { ...COUNT_NEEDED, type: { says: 'inputType', types: Object.keys(INPUT_BANDS) } },
  ),
  outputs: grammar([bareCount, labelAndPoints], { points: [] }, COUNT_NEEDED),
  terminals: grammar([bareCount, label], {}, COUNT_NEEDED),
};
