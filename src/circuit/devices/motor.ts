import type { Load } from '../anatomy/types.ts';
import { TYPICAL_WATTS } from '../standards.ts';
import type { DeviceTraits } from './traits.ts';

export const motor: DeviceTraits<'motor'> = {
  /** Three windings: joined in an inner star point `*` (3 terminals), or with both ends brought out (6). */
  anatomy({ terminals, volts }) {
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
  },
  verbs: [],
};
