/** What is to be expected of a skill's memory on a later day if it is practised on given days. */
import { chanceAfter, LEAST_STABILITY, type Memory, MOST_STABILITY, memoryAfter } from './model.ts';

/** A skill as it is now. Days are counted from now; `last` is the day of its last review, 0 or less. */
export interface Start {
  /** Null: never practised. */
  readonly memory: Memory | null;
  readonly last: number;
}

/**
 * Nobody knows how a first answer will go, so a first day leaves what a shaky one leaves. The later questions of that
 * day prove the skill; at once after the first they change nothing that is reckoned with here.
 */
export const afterFirstDay = (): Memory => memoryAfter(null, 0, 'shaky');

interface Case extends Memory {
  readonly weight: number;
}

/** Lapses of one review as one case: the geometric mean of the stabilities, the mean of the difficulties. */
function together(cases: readonly Case[]): Case[] {
  const weight = cases.reduce((sum, part) => sum + part.weight, 0);
  if (weight < 1e-9) return [];
  const mean = (of: (part: Case) => number): number =>
    cases.reduce((sum, part) => sum + part.weight * of(part), 0) / weight;
  // A mean of equal numbers may be a rounding beside them, and the model refuses what is beside its bounds.
  const stability = Math.exp(mean((part) => Math.log(part.stability)));
  return [
    {
      weight,
      stability: Math.min(Math.max(stability, LEAST_STABILITY), MOST_STABILITY),
      difficulty: mean(({ difficulty }) => difficulty),
    },
  ];
}

/**
 * The expected chance of a right answer on day `on` after practice on `days` (ascending, none later than `on`). Every
 * review succeeds with the chance that the model gives it and is then firm, else it is lost. Cases that lapsed in the
 * same review are reckoned together, so that the work grows with the square of the reviews and not with two to them.
 */
export function expectedChance(start: Start, days: readonly number[], on: number): number {
  const [first] = days;
  if (start.memory === null && first === undefined) return 0;
  let cases: readonly Case[] = [{ weight: 1, ...(start.memory ?? afterFirstDay()) }];
  let last = start.memory === null ? first! : start.last;
  for (const day of start.memory === null ? days.slice(1) : days) {
    const gap = Math.max(0, day - last);
    const kept: Case[] = [];
    const lapsed: Case[] = [];
    for (const part of cases) {
      const chance = chanceAfter(gap, part.stability);
      kept.push({ weight: part.weight * chance, ...memoryAfter(part, gap, 'firm') });
      lapsed.push({ weight: part.weight * (1 - chance), ...memoryAfter(part, gap, 'lost') });
    }
    cases = [...kept, ...together(lapsed)];
    last = day;
  }
  return cases.reduce(
    (sum, part) => sum + part.weight * chanceAfter(Math.max(0, on - last), part.stability),
    0,
  );
}
