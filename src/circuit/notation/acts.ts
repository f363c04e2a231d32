/** What is done to a circuit, as text: `press -S1; release -S1; wait 5 s; hold -K3`. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Checked } from '../../../shared/problem.ts';
import { type Act, act as actSchema } from '../../../shared/scenario.ts';
import { wordIssue } from '../issues.ts';
import { LIMITS } from '../limits.ts';
import type { CircuitCode } from '../problem-codes.ts';
import { DESIGNATION, parseTerminalRef, SUPPLY_NAME } from '../terminal-names.ts';
import { type CircuitView, circuitView } from '../view.ts';
import { anyOf, article, didYouMean, shown } from '../wording.ts';
import { noSuchDevice, noSuchSupply, noSuchTerminal, type Worded } from './absent.ts';
import type { LineReader } from './line-reader.ts';
import { type DeviceVerb, kindsFor, possibleActs, VERBS, type Verb } from './possible-acts.ts';
import { quantityAt, secondsOf } from './quantity.ts';
import { Report } from './report.ts';
import { statementsOf } from './statements.ts';

/**
 * Reads acts separated by `;` or line ends; every mistake is reported. With a circuit they are also checked against it:
 * that the device is there, and that this can be done to it.
 */
export function readActs(text: string, circuit?: Circuit): Checked<Act[]> {
  const report = new Report();
  const view = circuit && circuitView(circuit);
  const acts: Act[] = [];
  for (const line of statementsOf(text, LIMITS.acts, 'acts', report)) {
    const column = line.column;
    const act = readAct(line, view);
    if (!act) continue;
    if (!line.done) {
      line.problem(
        'bad-act',
        line.column,
        `${shown(line.peek()!.text)} is too much here.`,
        'Put a semicolon between two acts.',
      );
      continue;
    }
    const parsed = actSchema.safeParse(act);
    if (parsed.success) acts.push(parsed.data);
    else for (const issue of parsed.error.issues) line.problem(...placed(wordIssue(issue), column));
  }
  return report.conclude(() => acts);
}

const placed = ({ code, message, hint }: Worded, column: number): [CircuitCode, number, string, string] => [
  code,
  column,
  message,
  hint,
];

function readAct(line: LineReader, view: CircuitView | undefined): Act | undefined {
  const { column } = line;
  const verb = line.peekWord() as Verb | undefined;
  if (verb === undefined || !VERBS.includes(verb)) {
    const word = line.peek()!.text;
    line.problem(
      'unknown-act',
      column,
      `${shown(word)} is no act.`,
      `${didYouMean(word, VERBS)}There are: ${VERBS.join(', ')}.`,
    );
    return undefined;
  }
  line.skip();
  switch (verb) {
    case 'wait':
      return readWait(line);
    case 'fail':
    case 'restore':
      return readSupplyAct(line, verb, view);
    case 'turn':
      return readTurn(line, view);
    case 'on':
    case 'off':
      return readOutputAct(line, verb, view);
    default: {
      const device = readTarget(line, verb, view);
      return device === undefined ? undefined : { kind: verb, device };
    }
  }
}

function readWait(line: LineReader): Act | undefined {
  const quantity = quantityAt(line);
  const seconds = quantity && secondsOf(quantity);
  if (seconds === undefined) {
    line.problem('bad-act', line.column, 'How long is the wait?', 'Write a time in ms, s or min: wait 5 s.');
    return undefined;
  }
  line.skip(quantity!.words);
  return { kind: 'wait', seconds };
}

function readSupplyAct(
  line: LineReader,
  kind: 'fail' | 'restore',
  view: CircuitView | undefined,
): Act | undefined {
  const supply = line.peekWord();
  if (supply === undefined || !SUPPLY_NAME.test(supply)) {
    line.problem('bad-act', line.column, `Which supply is to ${kind}?`, `Write its letter: ${kind} A.`);
    return undefined;
  }
  if (view && !view.supplies.has(supply)) {
    line.problem(...placed(noSuchSupply(view, supply), line.column));
    return undefined;
  }
  line.skip();
  return { kind, supply };
}

function readTurn(line: LineReader, view: CircuitView | undefined): Act | undefined {
  const device = readTarget(line, 'turn', view);
  if (device === undefined) return undefined;
  const to = line.peekWord();
  const found = view?.devices.get(device)?.device;
  const positions = found?.kind === 'selector' ? found.positions : undefined;
  if (to === undefined || (positions && !positions.includes(to))) {
    const list = positions
      ? `Its positions are ${positions.join(', ')}: turn ${device} ${positions.at(-1)}.`
      : `Write the position after it: turn ${device} Auto.`;
    line.problem(
      to === undefined ? 'bad-act' : 'unknown-position',
      line.column,
      to === undefined ? `To which position is ${device} turned?` : `${device} has no position ${shown(to)}.`,
      `${to !== undefined && positions ? didYouMean(to, positions) : ''}${list}`,
    );
    return undefined;
  }
  line.skip();
  return { kind: 'turn', device, to };
}

function readOutputAct(line: LineReader, kind: 'on' | 'off', view: CircuitView | undefined): Act | undefined {
  const { column } = line;
  const word = line.peekWord() ?? '';
  const place = parseTerminalRef(word);
  if (!place?.device.startsWith('-')) {
    line.problem(
      'bad-act',
      column,
      `Which output is switched ${kind}?`,
      `Write the controller's output with its point: ${kind} -A2:Q1.`,
    );
    return undefined;
  }
  if (view) {
    if (!suits(line, kind, place.device, view)) return undefined;
    const terminals = view.devices.get(place.device)!.anatomy.terminals;
    if (!terminals.includes(place.terminal) || place.terminal === 'COM') {
      line.problem(...placed(noSuchTerminal(place.device, place.terminal, terminals), column));
      return undefined;
    }
  }
  line.skip();
  return { kind, device: place.device, point: place.terminal };
}

/** The device that an act is done to, if there is one and this can be done to it. */
function readTarget(line: LineReader, verb: DeviceVerb, view: CircuitView | undefined): string | undefined {
  const device = line.peekWord();
  if (device === undefined || !DESIGNATION.test(device)) {
    line.problem(
      'bad-act',
      line.column,
      device === undefined
        ? `What is to be done "${verb}" to?`
        : `${shown(device)} is no reference designation.`,
      `Write a device after it: ${verb} -${verb === 'hold' || verb === 'free' ? 'K3' : 'S1'}.`,
    );
    return undefined;
  }
  if (view && !suits(line, verb, device, view)) return undefined;
  line.skip();
  return device;
}

function suits(line: LineReader, verb: DeviceVerb, name: string, view: CircuitView): boolean {
  const found = view.devices.get(name)?.device;
  if (!found) {
    line.problem(...placed(noSuchDevice(view, name), line.column));
    return false;
  }
  if (kindsFor(verb).includes(found.kind)) return true;
  const possible = possibleActs(found);
  line.problem(
    'act-not-possible',
    line.column,
    `"${verb}" can't be done to ${name}: it is ${article(found.kind)}.`,
    possible.length > 0
      ? `What can be done to it: ${anyOf(possible)}.`
      : `"${verb}" is for ${anyOf([...kindsFor(verb)])}.`,
  );
  return false;
}

/** The acts as text; `readActs` gives them back. */
export const writeActs = (acts: readonly Act[]): string => acts.map(writeAct).join('; ');

function writeAct(act: Act): string {
  switch (act.kind) {
    case 'wait':
      return `wait ${act.seconds} s`;
    case 'fail':
    case 'restore':
      return `${act.kind} ${act.supply}`;
    case 'turn':
      return `turn ${act.device} ${act.to}`;
    case 'on':
    case 'off':
      return `${act.kind} ${act.device}:${act.point}`;
    default:
      return `${act.kind} ${act.device}`;
  }
}
