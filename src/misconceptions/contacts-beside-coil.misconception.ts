import type { Circuit } from '../../shared/circuit.ts';
import { asDrawn, isRelayContact, withSwitches } from './plan-tools.ts';
import type { Misconception } from './types.ts';

/** Sheets on which each terminal stands. */
function sheetsOf(circuit: Circuit): ReadonlyMap<string, ReadonlySet<number>> {
  const sheets = new Map<string, Set<number>>();
  const note = (terminal: string, sheet: number): void => {
    const known = sheets.get(terminal);
    if (known) known.add(sheet);
    else sheets.set(terminal, new Set([sheet]));
  };
  for (const { sheet, steps } of circuit.paths) {
    for (const { device, enter, leave } of steps) {
      note(`${device}:${enter}`, sheet);
      if (leave !== undefined) note(`${device}:${leave}`, sheet);
    }
  }
  return sheets;
}

export const contactsBesideCoil: Misconception = {
  id: 'contacts-beside-coil',
  idea: 'You moved only the contacts on the sheet of their coil; those of the same relay on other sheets stayed at rest.',
  advice:
    'The coil moves every contact that carries its designation, on whatever sheet it is drawn. The list under the coil says where they are.',
  source: 'shown by published training texts and forums',
  changePlan: (plan, circuit) => {
    const first = circuit.paths[0]?.sheet;
    if (circuit.paths.every(({ sheet }) => sheet === first)) return undefined;
    const sheets = sheetsOf(circuit);
    const coils = new Map<string, Set<number>>();
    for (const { mechanism, device, from } of plan.loads) {
      const on = mechanism < 0 ? undefined : sheets.get(`${device}:${from}`);
      if (on) coils.set(device, new Set([...(coils.get(device) ?? []), ...on]));
    }
    return withSwitches(plan, (contact) => {
      if (!isRelayContact(plan, contact)) return contact;
      const coil = coils.get(contact.device);
      // A changeover's common may be drawn with its other leg, so the outgoing terminal tells.
      const at = sheets.get(`${contact.device}:${contact.to}`);
      return coil && at && [...at].every((sheet) => !coil.has(sheet)) ? asDrawn(contact) : contact;
    });
  },
};
