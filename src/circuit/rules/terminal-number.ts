import { isNumbered, numbersAt } from '../contact-numbers.ts';
import type { Broken, DrawingRule } from './rule.ts';

export const terminalNumber: DrawingRule = {
  name: 'terminal-number',
  check({ devices }) {
    return devices.flatMap((device, index) =>
      ('contacts' in device ? device.contacts : []).flatMap(({ form, terminals }, place): Broken[] =>
        isNumbered(form, terminals)
          ? []
          : [
              {
                said: {
                  says: 'terminal-number',
                  form,
                  terminals: terminals.join('-'),
                  name: device.name,
                  usual: numbersAt(form, place + 1).join('-'),
                },
                concern: { kind: 'device', index, field: 'contacts' },
              },
            ],
      ),
    );
  },
};
