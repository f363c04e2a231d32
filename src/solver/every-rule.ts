import { type DrawingRule, drawingRules } from '../circuit/index.ts';
import { failsSafe } from './fails-safe.rule.ts';
import { greenMeansWell } from './green-means-well.rule.ts';
import { lockedBothWays } from './locked-both-ways.rule.ts';
import { noRestart } from './no-restart.rule.ts';
import { shortCircuit } from './short-circuit.rule.ts';
import { stopWins } from './stop-wins.rule.ts';

/** Rules of practice: what a circuit keeps so that it hurts nobody who builds one like it. All of them are solved. */
export const rulesOfPractice: readonly DrawingRule[] = [
  stopWins,
  noRestart,
  lockedBothWays,
  failsSafe,
  greenMeansWell,
];

/** All drawing rules: those that are read off the drawing, and those that are solved. */
export const everyRule: readonly DrawingRule[] = [...drawingRules, shortCircuit, ...rulesOfPractice];
