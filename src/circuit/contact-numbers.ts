/** Terminal numbers of auxiliary contacts after EN 50005, where a circuit states none. */
import type { ContactSpec } from '../../shared/circuit.ts';

type Form = ContactSpec['form'];

/** Second digit: 1-2 break, 3-4 make, 1-2-4 changeover (common, break leg, make leg). EN 50005. */
const FUNCTION_DIGITS: Readonly<Record<Form, readonly string[]>> = {
  make: ['3', '4'],
  break: ['1', '2'],
  changeover: ['1', '2', '4'],
};

/** The numbers of the contact in this place (from 1) of a device: the place is the sequence digit. */
export const numbersAt = (form: Form, place: number): string[] =>
  FUNCTION_DIGITS[form].map((digit) => `${place}${digit}`);

/**
 * The contacts of a contactor's two-digit figure, makes then breaks: 22 is 13-14, 21-22, 31-32, 43-44. The row: one make,
 * all breaks, the other makes (EN 50005 and EN 50012; the row from memory).
 */
export function auxiliaryRow(makes: number, breaks: number): ContactSpec[] {
  const first = Math.min(makes, 1);
  const forms: Form[] = [
    ...Array<Form>(first).fill('make'),
    ...Array<Form>(breaks).fill('break'),
    ...Array<Form>(makes - first).fill('make'),
  ];
  return forms.map((form, index) => ({ form, terminals: numbersAt(form, index + 1) }));
}
