/** Moments are milliseconds since 1970; the memory model counts days. */

export const DAY = 86_400_000;
const HOUR = 3_600_000;

/**
 * What is due within these hours is due now: somebody who practises at about the same hour every day isn't sent away
 * because yesterday's practice was twenty minutes later. Also how far a moment may lie in the future before the clock
 * is taken to have been put right.
 */
export const SLACK = 6 * HOUR;

/** Things done within this time were done on one day. Needs no time zone; shorter than a day for the same reason. */
export const ONE_PRACTICE_DAY = DAY - SLACK;

/** Days from one moment to a later one; 0 when the clock says it is earlier. */
export const daysBetween = (from: number, to: number): number => Math.max(0, to - from) / DAY;
