/** Circuits: the notation's reader and writer, the JSON form, and what a circuit's devices are made of. */
export { actsOn } from './acts-on.ts';
export {
  type Anatomy,
  anatomyOf,
  type Contact,
  hasCoil,
  type Load,
  type LoadRole,
  loadId,
  type Mechanism,
  type ReadAs,
  readAs,
  supplyTerminals,
} from './anatomy/index.ts';
export { traitsOf } from './devices/registry.ts';
export type { Concern, Finding, Found } from './findings.ts';
export { readCircuitJson } from './json.ts';
export { type JsonMistake, readJson } from './json-mistake.ts';
export { LIMITS } from './limits.ts';
export { nearest } from './nearest.ts';
export { readActs } from './notation/acts.ts';
export { readFaults, writeFaults } from './notation/faults.ts';
export { type ReadCircuit, readCircuit, readCircuitWithPlaces } from './notation/read-circuit.ts';
export { writeActs } from './notation/write-acts.ts';
export { writeCircuit } from './notation/write-circuit.ts';
export { type Place, placeOf, problemOf, type TextPlaces } from './places.ts';
export { checkRules, type DrawingRule, drawingRules, type Rule } from './rules/index.ts';
export { actSaid, faultSaid, named } from './said.ts';
export { unsound } from './soundness/index.ts';
export {
  entryOf,
  exitOf,
  parseTerminalList,
  parseTerminalRef,
  stepText,
  type TerminalPlace,
  terminalRefOf,
} from './terminal-names.ts';
export {
  type CircuitView,
  type Conductors,
  circuitView,
  conductorsOf,
  contactOf,
  type DeviceView,
  deviceOf,
  terminalsOf,
  type Wire,
  wiresOf,
} from './view.ts';
