import { terminalRefOf } from '../terminal-names.ts';
import { changeoversOf } from './parts.ts';
import type { Rule } from './rule.ts';

export const commonUnused: Rule = {
  name: 'common-unused',
  reason:
    'Each leg of a changeover pole makes with the common and with nothing else: without it a leg leads nowhere.',
  source: 'common practice, no source (terminal functions: EN 50005)',
  check(_circuit, view) {
    return changeoversOf(view)
      .filter(({ part, common, breakLeg, makeLeg }) => {
        const wired = (terminal: string) => view.wired.has(terminalRefOf(part.device.name, terminal));
        return !wired(common) && wired(breakLeg) !== wired(makeLeg);
      })
      .map(({ part, common, breakLeg, makeLeg }) => {
        const { name } = part.device;
        const leg = view.wired.has(terminalRefOf(name, breakLeg)) ? breakLeg : makeLeg;
        return {
          message: `The leg ${leg} of ${name} is wired and its common ${common} is not.`,
          hint: `Bring the conductor to ${name}:${common} and go on from ${leg}: ${name}:${common}-${leg}.`,
          concern: { kind: 'device', index: part.index, terminal: leg },
        };
      });
  },
};
