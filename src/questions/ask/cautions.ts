/** What stands beside a question that touches measuring or isolating. Sources: HSG85 and GS38 (HSE). */
import type { Circuit } from '../../../shared/circuit.ts';

const NO_PROOF = 'This is an exercise on a drawing. What a drawing says never replaces proving dead on site.';
const LOCAL = 'Follow the local code; work of this kind is for licensed people or under their supervision.';
const elsewhere = (circuit: Circuit): string[] =>
  circuit.supplies.length > 1 ? ['Conductors fed from another supply stay live when this one is off.'] : [];

export const isolatingCautions = (circuit: Circuit): string[] => [
  NO_PROOF,
  'On site: identify every source, isolate, lock off and keep the key, prove the tester on a known source, test between all conductors and to earth, prove the tester again.',
  ...elsewhere(circuit),
  LOCAL,
];

export const measuringCautions = (circuit: Circuit): string[] => [
  NO_PROOF,
  'Measuring on live equipment needs a reason, a safe way of doing it, and leads and a tester that are proved and fit for the voltage; where it can be done dead: isolate, lock off, prove dead with a proved tester.',
  ...elsewhere(circuit),
  LOCAL,
];
