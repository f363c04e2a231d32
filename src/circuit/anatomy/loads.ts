import type { DeviceOf } from '../../../shared/circuit.ts';
import { TYPICAL_WATTS } from '../standards.ts';
import type { Anatomy, Load } from './types.ts';

export const lampAnatomy = ({
  kind,
  rating,
  watts,
  ...rest
}: DeviceOf<'lamp' | 'sounder' | 'valve'>): Anatomy => {
  // IEC 60445 marks: lamps and sounders X1-X2; valves, being coils, A1-A2 (common practice, no source).
  const [from, to] = kind === 'valve' ? ['A1', 'A2'] : ['X1', 'X2'];
  const ohms = (rating.volts * rating.volts) / (watts ?? TYPICAL_WATTS[kind]);
  return {
    terminals: [from, to],
    mechanisms: [],
    contacts: [],
    loads: [{ from, to, role: kind, ohms, volts: rating.volts, current: rating.current }],
    ...('colour' in rest && rest.colour ? { colour: rest.colour } : {}),
  };
};

/** Three windings: joined in an inner star point `*` (3 terminals), or with both ends brought out (6). */
export const motorAnatomy = ({ terminals, volts }: DeviceOf<'motor'>): Anatomy => {
  const six = terminals === 6;
  const ohms = (3 * volts * volts) / TYPICAL_WATTS.motor;
  const winding = (letter: string): Load => ({
    from: `${letter}1`,
    to: six ? `${letter}2` : '*',
    role: 'motor',
    ohms,
    volts,
  });
  return {
    terminals: six ? ['U1', 'V1', 'W1', 'U2', 'V2', 'W2'] : ['U1', 'V1', 'W1'],
    mechanisms: [],
    contacts: [],
    loads: ['U', 'V', 'W'].map(winding),
  };
};
