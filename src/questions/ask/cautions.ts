/** What stands beside a question that touches measuring or isolating. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { CautionSaid } from '../../words/index.ts';

const cautions = (doing: 'isolating' | 'measuring', { supplies }: Circuit): CautionSaid[] => [
  { says: 'noProof' },
  { says: doing },
  ...(supplies.length > 1 && doing === 'measuring' ? [{ says: 'stray' } as const] : []),
  ...(supplies.length > 1 ? [{ says: 'elsewhere' } as const] : []),
  { says: 'local' },
];

export const isolatingCautions = (circuit: Circuit): CautionSaid[] => cautions('isolating', circuit);

export const measuringCautions = (circuit: Circuit): CautionSaid[] => cautions('measuring', circuit);
