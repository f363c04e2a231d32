import type { ContactSpec } from '../../../shared/circuit.ts';
import type { Contact } from './types.ts';

interface Placing {
  readonly mechanism: number;
  readonly pole: number;
  readonly main?: boolean;
  /** All position names of the mechanism; two for everything but a selector. */
  readonly positions: readonly string[];
}

/**
 * The contacts of one contact specification. A make is closed in the operated position, a break at rest; with named
 * positions (selectors) a make is closed in those and a break in all others.
 */
export function contactsOf(
  spec: ContactSpec,
  { mechanism, pole, main = false, positions }: Placing,
): Contact[] {
  const all = positions.map((_, index) => index);
  const named = spec.positions?.map((name) => positions.indexOf(name)).filter((index) => index >= 0);
  const actuated = named ?? all.slice(1);
  const resting = all.filter((index) => !actuated.includes(index));
  const [first = '', second = '', third = ''] = spec.terminals;
  const part = { mechanism, pole, main, changeover: spec.form === 'changeover' };
  const make = (from: string, to: string): Contact => ({
    ...part,
    from,
    to,
    closedIn: actuated,
    form: 'make',
  });
  const rest = (from: string, to: string): Contact => ({
    ...part,
    from,
    to,
    closedIn: resting,
    form: 'break',
  });
  switch (spec.form) {
    case 'make':
      return [make(first, second)];
    case 'break':
      return [rest(first, second)];
    case 'changeover':
      return [rest(first, second), make(first, third)];
  }
}

/** Changeover poles by EN 50005: common 1, break leg 2, make leg 4; timers 5, 6 and 8 (delayed). */
export function changeoverPoles(poles: number, delayed = false): ContactSpec[] {
  const digits = delayed ? ['5', '6', '8'] : ['1', '2', '4'];
  return Array.from({ length: poles }, (_, index) => ({
    form: 'changeover' as const,
    terminals: digits.map((digit) => `${index + 1}${digit}`),
  }));
}

/** Main poles 1-2, 3-4, 5-6, 7-8. */
export function mainPoles(poles: number, form: 'make' | 'break' = 'make'): ContactSpec[] {
  return Array.from({ length: poles }, (_, index) => ({
    form,
    terminals: [String(2 * index + 1), String(2 * index + 2)],
  }));
}

/** Every terminal of a list of contact specifications, in order. */
export const terminalsOf = (specs: readonly ContactSpec[]): string[] =>
  specs.flatMap((spec) => spec.terminals);
