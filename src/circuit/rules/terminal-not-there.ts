import { supplyTerminals } from '../anatomy/index.ts';
import type { Broken, DrawingRule } from './rule.ts';

export const terminalNotThere: DrawingRule = {
  name: 'terminal-not-there',
  check({ paths }, view) {
    const terminalsOf = (name: string): readonly string[] | undefined => {
      const supply = view.supplies.get(name);
      return supply ? supplyTerminals(supply) : view.devices.get(name)?.anatomy.terminals;
    };
    return paths.flatMap(({ steps }, path) =>
      steps.flatMap(({ device: name, enter, leave }, step): Broken[] => {
        const concern = { kind: 'step', path, step } as const;
        const terminals = terminalsOf(name);
        if (!terminals) return [{ said: { says: 'terminal-not-there.device', name }, concern }];
        return [enter, ...(leave === undefined ? [] : [leave])]
          .filter((terminal) => !terminals.includes(terminal))
          .map((terminal) => ({
            said: { says: 'terminal-not-there', name, terminal, terminals },
            concern,
          }));
      }),
    );
  },
};
