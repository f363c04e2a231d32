import { terminalRefOf } from '../terminal-names.ts';
import { changeoversOf } from './parts.ts';
import type { DrawingRule } from './rule.ts';

export const commonUnused: DrawingRule = {
  name: 'common-unused',
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
          said: { says: 'common-unused', name, leg, common },
          concern: { kind: 'device', index: part.index, terminal: leg },
        };
      });
  },
};
