import { DRIVE, type Machine } from './machine.ts';

/** Relays and contactors: what starts and stops machines. Timers, flashers and latching relays only tell them when. */
export const moversOf = ({ plan, drive }: Machine): number[] =>
  plan.mechanisms.flatMap((_, index) => (drive[index] === DRIVE.coil ? [index] : []));
