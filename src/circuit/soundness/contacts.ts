import type { Device } from '../../../shared/circuit.ts';
import { FORMS, numbersAt, terminalsOfForm } from '../contact-numbers.ts';
import { insideOf } from '../inside.ts';
import type { CircuitCode } from '../problem-codes.ts';
import { anyOf, article, didYouMean, shown } from '../wording.ts';
import { repeated } from './names.ts';
import type { Unsound } from './types.ts';

/** What is wrong within one device: its contacts, positions and points. */
export function contactFindings(device: Device, index: number): Unsound[] {
  const findings: Unsound[] = [];
  const find = (code: CircuitCode, field: string, message: string, hint: string) =>
    findings.push({ code, message, hint, concern: { kind: 'device', index, field } });
  const { name } = device;
  const specs = 'contacts' in device ? device.contacts : [];
  const known = device.kind === 'selector' ? device.positions : [];

  for (const [place, { form, terminals, positions = [] }] of specs.entries()) {
    if (terminals.length !== terminalsOfForm(form)) {
      const usual = numbersAt(form, place + 1).join('-');
      find(
        'contact-terminals',
        'contacts',
        `${article(form).replace(/^a/, 'A')} contact of ${name} has ${terminals.length} terminals.`,
        `It has ${terminalsOfForm(form)}, such as ${usual}.`,
      );
    }
    for (const position of positions.filter((each) => !known.includes(each))) {
      find(
        'unknown-position',
        'contacts',
        `${name} has no position ${shown(position)}.`,
        known.length > 0
          ? `${didYouMean(position, known)}Its positions are ${known.join(', ')}.`
          : 'Only a selector has contacts that depend on named positions.',
      );
    }
    if (repeated(positions).length > 0) {
      find(
        'repeated-position',
        'contacts',
        `A contact of ${name} names a position twice.`,
        'Name every position once.',
      );
    }
  }
  if (repeated(known).length > 0) {
    find(
      'repeated-position',
      'positions',
      `Two positions of ${name} have the same name.`,
      'Name them apart.',
    );
  }
  for (const word of known.filter((each) => (FORMS as readonly string[]).includes(each))) {
    find(
      'reserved-position',
      'positions',
      `A position can't be called ${word}: that is a form of contact.`,
      `Write it with a capital, ${word[0]!.toUpperCase()}${word.slice(1)}, or choose another name.`,
    );
  }
  const { terminals } = insideOf(device);
  const twice = repeated(terminals).map((at) => terminals[at]!);
  if (twice.length > 0) {
    find(
      'repeated-terminal',
      'contacts',
      `${name} has the terminal ${anyOf([...new Set(twice)], 'and')} twice.`,
      'Give every contact terminals of its own.',
    );
  }
  if ('points' in device && device.points.length > device.count) {
    find(
      'too-many-points',
      'points',
      `${name} has ${device.count} points and ${device.points.length} texts for them.`,
      `Write at most ${device.count} texts after the device's own.`,
    );
  }
  return findings;
}
