/** What holds the poles of a supply, on or off. */
import type { PlanPole, PlanSupply } from './plan.ts';

/**
 * The poles whose potential a supply holds: all while it is on. A supply that has failed, or that a short circuit has put
 * out, drives nothing; an earthed one's return is still bonded to earth.
 */
export function polesThatHold({ poles, earthed }: PlanSupply, on: boolean): readonly PlanPole[] {
  if (on) return poles;
  return earthed ? poles.slice(-1) : [];
}
