import { type DrawingRule, drawingRules } from '../circuit/index.ts';
import { shortCircuit } from './short-circuit.rule.ts';
import { stopWins } from './stop-wins.rule.ts';

/** All drawing rules: those that are read off the drawing, and those that are solved. */
export const everyRule: readonly DrawingRule[] = [...drawingRules, shortCircuit, stopWins];
