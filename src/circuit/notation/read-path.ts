import type { Step } from '../../../shared/circuit.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { LIMITS } from '../limits.ts';
import { corrected, DESIGNATION, parseTerminalList, SUPPLY_NAME } from '../terminal-names.ts';
import type { LineReader } from './line-reader.ts';

/** A path as far as it was read; a stop that was wrong is undefined (and reported). */
export interface PathDraft {
  readonly steps: readonly (Step | undefined)[];
  readonly columns: readonly number[];
}

/** `A:L  -F1:1-2  -K3:A1-A2  A:N`. Undefined when it has too many stops to be read. */
export function readPath(line: LineReader): PathDraft | undefined {
  const stops = line.words;
  if (stops.length > LIMITS.stopsOnAPath) {
    line.problem(
      { says: 'path-length.most', stops: stops.length, most: LIMITS.stopsOnAPath },
      stops[LIMITS.stopsOnAPath]!.column,
    );
    return undefined;
  }
  if (stops.length < 2) {
    line.problem({ says: 'path-length' }, stops[0]!.column);
  }
  const steps: (Step | undefined)[] = [];
  for (; !line.done; line.skip()) steps.push(readStop(line));
  return { steps, columns: stops.map(({ column }) => column) };
}

function readStop(line: LineReader): Step | undefined {
  const { kind, text, column } = line.peek()!;
  const wrong = (said: CircuitProblemSaid) => {
    line.problem(said, column);
    return undefined;
  };
  if (kind === 'text') return wrong({ says: 'unexpected-option.path' });
  const colon = text.indexOf(':');
  if (colon < 0) {
    const isName = DESIGNATION.test(text) || SUPPLY_NAME.test(text);
    return isName ? wrong({ says: 'missing-terminal', name: text }) : wrong({ says: 'bad-stop', word: text });
  }
  const device = text.slice(0, colon);
  const terminals = text.slice(colon + 1);
  if (!DESIGNATION.test(device) && !SUPPLY_NAME.test(device)) {
    return wrong({ says: 'bad-designation.stop', word: device, meant: corrected(device) });
  }
  const names = parseTerminalList(terminals);
  if (!names || names.length > 2) {
    return terminals === ''
      ? wrong({ says: 'missing-terminal.afterColon', name: device })
      : wrong({ says: 'bad-stop.terminals', word: terminals });
  }
  const [enter, leave] = names as [string, string?];
  return leave === undefined ? { device, enter } : { device, enter, leave };
}
