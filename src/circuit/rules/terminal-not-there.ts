import { supplyTerminals } from '../anatomy/index.ts';
import type { Found } from '../findings.ts';
import { someOf } from '../wording.ts';
import type { Rule } from './rule.ts';

export const terminalNotThere: Rule = {
  name: 'terminal-not-there',
  reason: 'A conductor ends at a terminal that somebody can put a screwdriver to.',
  source: 'EN 50005 (withdrawn; carried on in annexes of IEC 60947-1 and 60947-5-1, from memory)',
  check({ paths }, view) {
    const terminalsOf = (name: string): readonly string[] | undefined => {
      const supply = view.supplies.get(name);
      return supply ? supplyTerminals(supply) : view.devices.get(name)?.anatomy.terminals;
    };
    return paths.flatMap(({ steps }, path) =>
      steps.flatMap(({ device, enter, leave }, step): Found[] => {
        const concern = { kind: 'step', path, step } as const;
        const terminals = terminalsOf(device);
        if (!terminals) {
          return [
            {
              message: `A path comes to ${device}, and the circuit hasn't got it.`,
              hint: `Add ${device} to the circuit, or take it off the path.`,
              concern,
            },
          ];
        }
        return [enter, ...(leave === undefined ? [] : [leave])]
          .filter((terminal) => !terminals.includes(terminal))
          .map((terminal) => ({
            message: `${device} has no terminal ${terminal}.`,
            hint: `Its terminals are ${someOf(terminals, 30)}.`,
            concern,
          }));
      }),
    );
  },
};
