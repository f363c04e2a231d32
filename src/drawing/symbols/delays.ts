/** The brake on a late contact: an arc that catches the movement, on a double line to the blade. */
import type { Delay } from '../parts/moving.ts';
import { line, type Stroke } from './art.ts';

/** How far it reaches left of the contact's line. */
export const BRAKE = 20;

/**
 * Late in the direction from the arc towards its centre (from memory S00243, S00244): the blade moves right when operated,
 * so the arc of a contact that operates late bulges left, of one that releases late right. A flasher's has none.
 */
export function brakeStrokes(delay: Delay, to: number): Stroke[] {
  if (delay === 'pulse') return [];
  const operate = delay === 'operate';
  const arc: Stroke = operate
    ? { kind: 'arc', at: [-11, 23], r: 8, from: 120, to: 240 }
    : { kind: 'arc', at: [-22, 23], r: 8, from: -60, to: 60 };
  const end = operate ? -18.4 : -14.4;
  return [arc, line([end, 21.5], [to, 21.5]), line([end, 24.5], [to, 24.5])];
}
