/**
 * The same formulas as in model.ts, to the last digit, taken apart: what follows from a memory alone, and what a review then
 * makes of it. A plan reckons a hundred thousand reviews, many of the same memory after different gaps; by the library, which
 * works everything out at each of them, that took two seconds, and ten on a phone.
 *
 * FSRS-6 as published with the library: https://github.com/open-spaced-repetition/fsrs4anki/wiki/The-Algorithm.
 * tests/memory/steps.test.ts holds it against the library.
 */
import { clamp, computeDecayFactor, FSRSAlgorithm, generatorParameters, S_MAX, S_MIN } from 'ts-fsrs';

const { w } = new FSRSAlgorithm(generatorParameters({ enable_fuzz: false, enable_short_term: false }))
  .parameters;
const parameter = (at: number): number => w[at]!;

/** As the library rounds. */
const rounded = (value: number): number => Math.round(value * 1e8) / 1e8;

const { decay, factor } = computeDecayFactor(w);

/** The chance of a right answer, 0 to 1, `days` (0 or more) after a review that left this stability. */
export const chanceOf = (days: number, stability: number): number =>
  rounded((1 + (factor * days) / stability) ** decay);

const W8 = Math.exp(parameter(8));
const W9 = -parameter(9);
const W10 = parameter(10);
const W11 = parameter(11);
const W12 = -parameter(12);
const W13 = parameter(13);
const W14 = parameter(14);

/** How strongly a memory grows with a right answer. */
export const growthOf = (stability: number, difficulty: number): number =>
  W8 * (11 - difficulty) * stability ** W9;

/** The stability after a right answer of that chance. */
export const keptStability = (stability: number, growth: number, chance: number): number =>
  rounded(clamp(stability * (1 + growth * (Math.exp((1 - chance) * W10) - 1)), S_MIN, S_MAX));

/** What a memory falls back to. */
export const fallOf = (stability: number, difficulty: number): number =>
  W11 * difficulty ** W12 * ((stability + 1) ** W13 - 1);

/** The stability after a lapse where a right answer had that chance. */
export const lapsedStability = (stability: number, fall: number, chance: number): number =>
  clamp(rounded(stability), S_MIN, rounded(clamp(fall * Math.exp((1 - chance) * W14), S_MIN, S_MAX)));

/** The difficulty to which all of them tend: that of what was answered with ease at once. */
const EASY = rounded(parameter(4) - Math.exp(3 * parameter(5)) + 1);
const W6 = parameter(6);
const W7 = parameter(7);

const reverted = (difficulty: number): number => clamp(rounded(W7 * EASY + (1 - W7) * difficulty), 1, 10);

/** The difficulty after a firm answer, 1 to 10. */
export const difficultyKept = reverted;

/** The difficulty after a lapse, 1 to 10. */
export const difficultyAfterLapse = (difficulty: number): number =>
  reverted(difficulty + rounded((2 * W6 * (10 - difficulty)) / 9));
