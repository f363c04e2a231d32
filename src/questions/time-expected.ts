/**
 * What somebody who can do it takes for a question, reading the drawing included. Seconds, common practice, no source:
 * the grade only compares with the half and the tenth of it (docs/memory.md).
 */
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';

const TO_BEGIN = 10;
const EACH_HOP = 1.2;
const EACH_ITEM = 4;
const EACH_ACT = 6;
const EACH_FAULT = 6;

/**
 * @param items - how many things are asked
 * @param rounds - how often the circuit has to be gone through (a wiring question: once for each choice)
 */
export function timeFor(circuit: Circuit, scenario: Scenario, items: number, rounds = 1): number {
  const hops = circuit.paths.reduce(
    (sum, { steps }) => sum + steps.filter(({ leave }) => leave !== undefined).length,
    0,
  );
  const once = EACH_HOP * hops + EACH_ACT * scenario.acts.length + EACH_FAULT * scenario.faults.length;
  return Math.round(TO_BEGIN + rounds * once + EACH_ITEM * items);
}
