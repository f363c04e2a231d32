import type { DeviceOf } from '../../../shared/circuit.ts';
import { INPUT_BANDS, SPEEDS } from '../standards.ts';
import type { Anatomy } from './types.ts';

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

export const inputsAnatomy = ({ count, type, points }: DeviceOf<'inputs'>): Anatomy => {
  const bands = INPUT_BANDS[type];
  return {
    terminals: [...numbers(count).map((n) => `I${n}`), 'COM'],
    mechanisms: [],
    contacts: [],
    loads: numbers(count).map((n) => ({
      from: `I${n}`,
      to: 'COM',
      role: 'input',
      ohms: bands.ohms,
      volts: bands.volts,
      current: 'DC',
      point: `I${n}`,
      bands,
      ...(points[n - 1] ? { text: points[n - 1] as string } : {}),
    })),
  };
};

export const outputsAnatomy = ({ name, count }: DeviceOf<'outputs'>): Anatomy => ({
  terminals: ['COM', ...numbers(count).map((n) => `Q${n}`)],
  mechanisms: numbers(count).map((n) => ({
    id: `${name}:Q${n}`,
    drive: 'act',
    positions: ['off', 'on'],
    live: 0,
    speeds: SPEEDS.relay,
    delays: [],
    protects: false,
  })),
  contacts: numbers(count).map((n) => ({
    from: 'COM',
    to: `Q${n}`,
    mechanism: n - 1,
    closedIn: [1],
    form: 'make',
    pole: n,
    changeover: false,
    main: false,
  })),
  loads: [],
});

export const terminalsAnatomy = ({ count }: DeviceOf<'terminals'>): Anatomy => ({
  terminals: numbers(count).map(String),
  mechanisms: [],
  contacts: [],
  loads: [],
});
