import type { Device } from '../../../shared/circuit.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { FORMS, numbersAt, terminalsOfForm } from '../contact-numbers.ts';
import { insideOf } from '../inside.ts';
import { nearest } from '../nearest.ts';
import { repeated } from './names.ts';
import { type Unsound, unsoundAt } from './types.ts';

/** What is wrong within one device: its contacts, positions and points. */
export function contactFindings(device: Device, index: number): Unsound[] {
  const findings: Unsound[] = [];
  const find = (field: string, said: CircuitProblemSaid) =>
    findings.push(unsoundAt(said, { kind: 'device', index, field }));
  const { name } = device;
  const specs = 'contacts' in device ? device.contacts : [];
  const known = 'positions' in device ? device.positions : [];

  for (const [place, { form, terminals, positions = [] }] of specs.entries()) {
    if (terminals.length !== terminalsOfForm(form)) {
      find('contacts', {
        says: 'contact-terminals',
        form,
        name,
        has: terminals.length,
        needs: terminalsOfForm(form),
        usual: numbersAt(form, place + 1).join('-'),
      });
    }
    for (const position of positions.filter((each) => !known.includes(each))) {
      find(
        'contacts',
        known.length > 0
          ? {
              says: 'unknown-position',
              name,
              position,
              meant: nearest(position, known),
              positions: known,
            }
          : { says: 'unknown-position.noSelector', name, position },
      );
    }
    if (repeated(positions).length > 0) find('contacts', { says: 'repeated-position.contact', name });
  }
  if (repeated(known).length > 0) find('positions', { says: 'repeated-position', name });
  for (const position of known.filter((each) => (FORMS as readonly string[]).includes(each))) {
    find('positions', { says: 'reserved-position', position });
  }
  const { terminals } = insideOf(device);
  const twice = repeated(terminals).map((at) => terminals[at]!);
  if (twice.length > 0) {
    find('contacts', { says: 'repeated-terminal', name, terminals: [...new Set(twice)] });
  }
  if ('points' in device && device.points.length > device.count) {
    find('points', {
      says: 'too-many-points',
      name,
      points: device.count,
      texts: device.points.length,
    });
  }
  return findings;
}
