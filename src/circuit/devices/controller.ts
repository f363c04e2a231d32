import type { DeviceOf } from '../../../shared/circuit.ts';
import type { Anatomy } from '../anatomy/types.ts';
import { INPUT_BANDS, SPEEDS } from '../standards.ts';
import type { DeviceTraits } from './traits.ts';

const COMMON = 'COM';

const numbers = (count: number): number[] => Array.from({ length: count }, (_, index) => index + 1);

/** The text beside a point, where it has one. */
const textAt = (points: readonly string[], number: number): { readonly text?: string } => {
  const text = points[number - 1];
  return text ? { text } : {};
};

export const inputs: DeviceTraits<'inputs'> = {
  anatomy({ count, type, points }) {
    const bands = INPUT_BANDS[type];
    return {
      terminals: [...numbers(count).map((n) => `I${n}`), COMMON],
      common: COMMON,
      mechanisms: [],
      contacts: [],
      loads: numbers(count).map((n) => ({
        from: `I${n}`,
        to: COMMON,
        role: 'input',
        ohms: bands.ohms,
        volts: bands.volts,
        current: 'DC',
        point: `I${n}`,
        bands,
        ...textAt(points, n),
      })),
    };
  },
  verbs: [],
};

const outputsAnatomy = ({ name, count, points }: DeviceOf<'outputs'>): Anatomy => ({
  terminals: [COMMON, ...numbers(count).map((n) => `Q${n}`)],
  common: COMMON,
  mechanisms: numbers(count).map((n) => ({
    id: `${name}:Q${n}`,
    drive: 'act',
    positions: ['off', 'on'],
    live: 0,
    speeds: SPEEDS.relay,
    delays: [],
    protects: false,
    ...textAt(points, n),
  })),
  contacts: numbers(count).map((n) => ({
    from: COMMON,
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

export const outputs: DeviceTraits<'outputs'> = {
  anatomy: outputsAnatomy,
  verbs: ['on', 'off'],
  acts: ({ name, count }) =>
    numbers(count).flatMap((n) => [
      { kind: 'on' as const, device: name, point: `Q${n}` },
      { kind: 'off' as const, device: name, point: `Q${n}` },
    ]),
  stands: ['outputOff', 'outputOn'],
};
