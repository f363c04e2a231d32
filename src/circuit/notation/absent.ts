/** What a circuit hasn't got. */
import type { CircuitProblemSaid } from '../../words/index.ts';
import { nearest } from '../nearest.ts';
import type { CircuitView } from '../view.ts';

export function noSuchDevice({ devices }: CircuitView, name: string): CircuitProblemSaid {
  const names = [...devices.keys()];
  return { says: 'unknown-designation.inCircuit', name, meant: nearest(name, names), names };
}

export const noSuchSupply = ({ supplies }: CircuitView, name: string): CircuitProblemSaid => ({
  says: 'unknown-supply.inCircuit',
  name,
  names: [...supplies.keys()],
});

/** A terminal that isn't there, or is and is of another sort. */
export const noSuchTerminal = (
  name: string,
  terminal: string,
  terminals: readonly string[],
): CircuitProblemSaid => ({
  says: terminals.includes(terminal) ? 'unknown-terminal.ofThatSort' : 'unknown-terminal',
  name,
  terminal,
  meant: nearest(
    terminal,
    terminals.filter((each) => each !== terminal),
  ),
  terminals,
});
