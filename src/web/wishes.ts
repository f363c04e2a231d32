import type { PlanWishes } from '../../shared/memory.ts';
import type { Settings } from '../../shared/settings.ts';

/** What a question takes with reading the explanation, for a plan. Common practice, no source. */
const SECONDS_A_QUESTION = 45;

/** What is wished of a plan; null until a date and the minutes for it are set. */
export const wishesOf = ({ assessmentAt, minutesADay }: Settings): PlanWishes | null =>
  assessmentAt !== null && minutesADay !== null
    ? { assessmentAt, minutesADay, secondsPerQuestion: SECONDS_A_QUESTION }
    : null;
