/** The wording for what a circuit hasn't got. */
import type { CircuitCode } from '../problem-codes.ts';
import type { CircuitView } from '../view.ts';
import { didYouMean, someOf } from '../wording.ts';

export interface Worded {
  readonly code: CircuitCode;
  readonly message: string;
  readonly hint: string;
}

export function noSuchDevice({ devices }: CircuitView, name: string): Worded {
  const names = [...devices.keys()];
  return {
    code: 'unknown-designation',
    message: `There is no device ${name} in this circuit.`,
    hint: `${didYouMean(name, names)}It has ${someOf(names) || 'no device'}.`,
  };
}

export function noSuchSupply({ supplies }: CircuitView, name: string): Worded {
  const names = [...supplies.keys()];
  return {
    code: 'unknown-supply',
    message: `There is no supply ${name} in this circuit.`,
    hint: `It has ${names.length === 1 ? 'the supply' : 'the supplies'} ${someOf(names)}.`,
  };
}

export const noSuchTerminal = (name: string, terminal: string, terminals: readonly string[]): Worded => ({
  code: 'unknown-terminal',
  message: `${name} has no terminal ${terminal}${terminals.includes(terminal) ? ' of that sort' : ''}.`,
  hint: `${didYouMean(
    terminal,
    terminals.filter((each) => each !== terminal),
  )}Its terminals are ${someOf(terminals, 30)}.`,
});
