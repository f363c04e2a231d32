import type { Act } from '../../../shared/scenario.ts';

/** The acts as text; `readActs` gives them back. */
export const writeActs = (acts: readonly Act[]): string => acts.map(writeAct).join('; ');

export function writeAct(act: Act): string {
  switch (act.kind) {
    case 'wait':
      return `wait ${act.seconds} s`;
    case 'fail':
    case 'restore':
      return `${act.kind} ${act.supply}`;
    case 'turn':
      return `turn ${act.device} ${act.to}`;
    case 'on':
    case 'off':
      return `${act.kind} ${act.device}:${act.point}`;
    default:
      return `${act.kind} ${act.device}`;
  }
}
