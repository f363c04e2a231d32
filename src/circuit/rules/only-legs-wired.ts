import { terminalRefOf } from '../terminal-names.ts';
import { changeoversOf } from './parts.ts';
import type { DrawingRule } from './rule.ts';

export const onlyLegsWired: DrawingRule = {
  name: 'only-legs-wired',
  check(_circuit, view) {
    return changeoversOf(view)
      .filter(({ part, common, breakLeg, makeLeg }) => {
        const wired = (terminal: string) => view.wired.has(terminalRefOf(part.device.name, terminal));
        return !wired(common) && wired(breakLeg) && wired(makeLeg);
      })
      .map(({ part, common, breakLeg, makeLeg }) => ({
        said: { says: 'only-legs-wired', name: part.device.name, common, breakLeg, makeLeg },
        concern: { kind: 'device', index: part.index, terminal: breakLeg },
      }));
  },
};
