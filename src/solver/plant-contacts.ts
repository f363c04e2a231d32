import type { Circuit } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { actsOn, traitsOf } from '../circuit/index.ts';

/** What the plant itself moves, field contacts and overloads: the act that leaves the drawn state of each. */
export const plantActs = ({ devices }: Circuit): readonly Act[] =>
  devices.flatMap((device) => {
    const { movedBy, verbs } = traitsOf(device);
    return movedBy === 'plant' || verbs.includes('trip') ? actsOn(device).slice(0, 1) : [];
  });
