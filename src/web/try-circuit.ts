import { signal } from '@preact/signals';
import type { Circuit } from '../../shared/circuit.ts';

/** The circuit of the question answered last, to be tried afterwards. */
export const lastCircuit = signal<Circuit | undefined>(undefined);
