import { terminalRefOf } from '../terminal-names.ts';
import { changeoversOf } from './parts.ts';
import type { Rule } from './rule.ts';

export const onlyLegsWired: Rule = {
  name: 'only-legs-wired',
  reason:
    'With the two legs of a pole wired and its common left off, no current can ever flow: at rest one leg is open, energised the other.',
  source: 'common practice, no source (terminal functions: EN 50005)',
  check(_circuit, view) {
    return changeoversOf(view)
      .filter(({ part, common, breakLeg, makeLeg }) => {
        const wired = (terminal: string) => view.wired.has(terminalRefOf(part.device.name, terminal));
        return !wired(common) && wired(breakLeg) && wired(makeLeg);
      })
      .map(({ part, common, breakLeg, makeLeg }) => ({
        message: `Only the two legs ${breakLeg} and ${makeLeg} of ${part.device.name} are wired.`,
        hint: `Use the common ${common} with one leg: ${common}-${breakLeg} is closed at rest, ${common}-${makeLeg} when operated.`,
        concern: { kind: 'device', index: part.index, terminal: breakLeg },
      }));
  },
};
