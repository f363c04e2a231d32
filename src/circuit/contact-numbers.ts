/** Terminal numbers of auxiliary contacts after EN 50005, where a circuit states none. */
import type { ContactSpec } from '../../shared/circuit.ts';

export const FORMS = ['make', 'break', 'changeover'] as const;
export type Form = ContactSpec['form'];

export const isForm = (word: string | undefined): word is Form =>
  (FORMS as readonly (string | undefined)[]).includes(word);

export const terminalsOfForm = (form: Form): number => (form === 'changeover' ? 3 : 2);

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

/** Special functions, such as delayed contacts: 5-6 break, 7-8 make, 5-6-8 changeover (the last from memory). EN 50005. */
const SPECIAL_DIGITS: Readonly<Record<Form, readonly string[]>> = {
  make: ['7', '8'],
  break: ['5', '6'],
  changeover: ['5', '6', '8'],
};

/**
 * Whether EN 50005 gives these terminals to this form of contact: one sequence number before all of them, then the function
 * digits. The two ends of a make or break may come in either order.
 */
export function isNumbered(form: Form, terminals: readonly string[]): boolean {
  const numbers = terminals.map((terminal) => /^([1-9][0-9]?)([0-9])$/.exec(terminal));
  const sequences = new Set(numbers.map((match) => match?.[1]));
  if (numbers.includes(null) || sequences.size !== 1) return false;
  const digits = numbers.map((match) => match?.[2]);
  const inOrder = (form === 'changeover' ? digits : digits.toSorted()).join();
  return inOrder === FUNCTION_DIGITS[form].join() || inOrder === SPECIAL_DIGITS[form].join();
}
