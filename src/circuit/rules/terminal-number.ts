import { type Form, isNumbered, numbersAt } from '../contact-numbers.ts';
import type { Found } from '../findings.ts';
import type { Rule } from './rule.ts';

const FUNCTIONS: Readonly<Record<Form, string>> = {
  make: '3 and 4 (delayed: 7 and 8)',
  break: '1 and 2 (delayed: 5 and 6)',
  changeover: '1, 2 and 4 (delayed: 5, 6 and 8)',
};

export const terminalNumber: Rule = {
  name: 'terminal-number',
  reason: 'The second digit of a contact says what it is, so that a drawing can be read without its legend.',
  source: 'EN 50005 (withdrawn; carried on in annexes of IEC 60947-1 and 60947-5-1, from memory)',
  check({ devices }) {
    return devices.flatMap((device, index) =>
      ('contacts' in device ? device.contacts : []).flatMap(({ form, terminals }, place): Found[] =>
        isNumbered(form, terminals)
          ? []
          : [
              {
                message: `The ${form} contact ${terminals.join('-')} of ${device.name} has numbers that EN 50005 doesn't give it.`,
                hint: `All begin with the same sequence digit and end with ${FUNCTIONS[form]}: ${numbersAt(form, place + 1).join('-')}.`,
                concern: { kind: 'device', index, field: 'contacts' },
              },
            ],
      ),
    );
  },
};
