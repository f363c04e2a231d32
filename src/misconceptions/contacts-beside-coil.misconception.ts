import type { Circuit } from '../../shared/circuit.ts';
import { asDrawn, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

/**
 * The sheet on which what lies behind each terminal is drawn: where a path goes through it. A path that only joins the
 * terminal, as that of a lamp beside a coil, draws a wire to it.
 */
function sheetsOf(circuit: Circuit): ReadonlyMap<string, number> {
  const sheets = new Map<string, number>();
  for (const { sheet, steps } of circuit.paths) {
    for (const { device, enter, leave } of steps) {
      if (leave === undefined) continue;
      sheets.set(`${device}:${enter}`, sheet);
      sheets.set(`${device}:${leave}`, sheet);
    }
  }
  return sheets;
}

export const contactsBesideCoil: Misconception = {
  id: 'contacts-beside-coil',
  changePlan: (plan, circuit) => {
    const sheets = sheetsOf(circuit);
    const coils = new Map<string, Set<number | undefined>>();
    for (const { mechanism, device, from } of plan.loads) {
      if (mechanism < 0) continue;
      coils.set(device, (coils.get(device) ?? new Set()).add(sheets.get(`${device}:${from}`)));
    }
    return withSwitches(plan, (contact) => {
      // A changeover's common may be drawn with its other leg, so the outgoing terminal tells.
      const at = sheets.get(`${contact.device}:${contact.to}`);
      const beside = coils.get(contact.device)?.has(at) ?? true;
      return beside || at === undefined ? contact : asDrawn(contact);
    });
  },
};
