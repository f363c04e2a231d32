import type { Step } from '../../../shared/circuit.ts';
import { LIMITS } from '../limits.ts';
import type { CircuitCode } from '../problem-codes.ts';
import { DESIGNATION, parseTerminalList, SUPPLY_NAME } from '../terminal-names.ts';
import { shown } from '../wording.ts';
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
      'path-length',
      stops[LIMITS.stopsOnAPath]!.column,
      `This path has ${stops.length} stops; at most ${LIMITS.stopsOnAPath} are read.`,
      'End it at a terminal and go on from there on the next line.',
    );
    return undefined;
  }
  if (stops.length < 2) {
    line.problem(
      'path-length',
      stops[0]!.column,
      'A path has at least two stops: a single one joins nothing.',
      'Write where the conductor goes on to, such as A:L  -F1:1-2.',
    );
  }
  const steps: (Step | undefined)[] = [];
  for (; !line.done; line.skip()) steps.push(readStop(line));
  return { steps, columns: stops.map(({ column }) => column) };
}

function readStop(line: LineReader): Step | undefined {
  const { kind, text, column } = line.peek()!;
  const wrong = (code: CircuitCode, message: string, hint: string) => {
    line.problem(code, column, message, hint);
    return undefined;
  };
  if (kind === 'text') {
    return wrong(
      'unexpected-option',
      'A path has no text.',
      'Write the text where the device is declared: -H1 lamp "Fan healthy".',
    );
  }
  const colon = text.indexOf(':');
  if (colon < 0) {
    const isName = DESIGNATION.test(text) || SUPPLY_NAME.test(text);
    return isName
      ? wrong(
          'missing-terminal',
          `This path comes to ${text} and doesn't say at which terminal.`,
          `Write the terminal after a colon: ${text}${text.startsWith('-') ? ':13 or -K3:13-14' : ':L or A:N'}.`,
        )
      : wrong(
          'bad-stop',
          `${shown(text)} is no stop on a path.`,
          'A stop is a device and its terminals: -K3:11-12.',
        );
  }
  const device = text.slice(0, colon);
  const terminals = text.slice(colon + 1);
  if (!DESIGNATION.test(device) && !SUPPLY_NAME.test(device)) {
    const corrected = `-${device.replace(/^[-\u2010-\u2015\u2212]*/, '').toUpperCase()}`;
    return wrong(
      'bad-designation',
      `${shown(device)} is neither a reference designation nor a supply.`,
      `${DESIGNATION.test(corrected) ? `Did you mean ${corrected}? ` : ''}Write a device such as -K3, or a supply such as A.`,
    );
  }
  const names = parseTerminalList(terminals);
  if (!names || names.length > 2) {
    return terminals === ''
      ? wrong(
          'missing-terminal',
          `This path comes to ${device} and doesn't say at which terminal.`,
          `Write the terminal after the colon: ${device}:13 or ${device}:13-14.`,
        )
      : wrong(
          'bad-stop',
          `${shown(terminals)} are no terminals.`,
          'A stop has one terminal, or two with a hyphen between them: -K3:A1 or -K3:A1-A2.',
        );
  }
  const [enter, leave] = names as [string, string?];
  return leave === undefined ? { device, enter } : { device, enter, leave };
}
