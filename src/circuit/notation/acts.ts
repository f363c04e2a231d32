/** What is done to a circuit, as text: `press -S1; release -S1; wait 5 s; hold -K3`. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import type { Checked } from '../../../shared/problem.ts';
import { type Act, act as actSchema } from '../../../shared/scenario.ts';
import { actsOn } from '../acts-on.ts';
import { issueSaid } from '../issues.ts';
import { nearest } from '../nearest.ts';
import { DESIGNATION, parseTerminalRef, SUPPLY_NAME } from '../terminal-names.ts';
import { type CircuitView, circuitView } from '../view.ts';
import { noSuchDevice, noSuchSupply, noSuchTerminal } from './absent.ts';
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
  for (const line of statementsOf(text, 'acts', report)) {
    const column = line.column;
    const act = readAct(line, view);
    if (!act) continue;
    if (!line.done) {
      line.problem({ says: 'bad-act.tooMuch', word: line.peek()!.text });
      continue;
    }
    const parsed = actSchema.safeParse(act);
    if (parsed.success) acts.push(parsed.data);
    else for (const issue of parsed.error.issues) line.problem(issueSaid(issue), column);
  }
  return report.conclude(() => acts);
}

function readAct(line: LineReader, view: CircuitView | undefined): Act | undefined {
  const verb = line.peekWord() as Verb | undefined;
  if (verb === undefined || !VERBS.includes(verb)) {
    const word = line.peek()!.text;
    line.problem({ says: 'unknown-act', word, meant: nearest(word, VERBS), verbs: VERBS });
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
    line.problem({ says: 'bad-act.wait' });
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
    line.problem({ says: 'bad-act.supply', act: kind });
    return undefined;
  }
  if (view && !view.supplies.has(supply)) {
    line.problem(noSuchSupply(view, supply));
    return undefined;
  }
  line.skip();
  return { kind, supply };
}

function readTurn(line: LineReader, view: CircuitView | undefined): Act | undefined {
  const device = readTarget(line, 'turn', view);
  if (device === undefined) return undefined;
  const to = line.peekWord();
  const positions = view && positionsOf(view.devices.get(device)!.device);
  if (to === undefined || (positions && !positions.includes(to))) {
    line.problem(
      to === undefined || !positions
        ? { says: 'bad-act.turn', name: device, positions: positions ?? [] }
        : {
            says: 'unknown-position.turn',
            name: device,
            position: to,
            meant: nearest(to, positions),
            positions,
          },
    );
    return undefined;
  }
  line.skip();
  return { kind: 'turn', device, to };
}

/** What it can be turned to, the drawn position first. */
const positionsOf = (device: Device): readonly string[] =>
  actsOn(device).flatMap((act) => (act.kind === 'turn' ? [act.to] : []));

function readOutputAct(line: LineReader, kind: 'on' | 'off', view: CircuitView | undefined): Act | undefined {
  const word = line.peekWord() ?? '';
  const place = parseTerminalRef(word);
  if (!place?.device.startsWith('-')) {
    line.problem({ says: 'bad-act.output', act: kind });
    return undefined;
  }
  if (view) {
    if (!suits(line, kind, place.device, view)) return undefined;
    const { device, anatomy } = view.devices.get(place.device)!;
    if (!actsOn(device).some((act) => act.kind === kind && act.point === place.terminal)) {
      line.problem(noSuchTerminal(place.device, place.terminal, anatomy.terminals));
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
    const example = verb === 'hold' || verb === 'free' ? '-K3' : '-S1';
    line.problem(
      device === undefined
        ? { says: 'bad-act.device', act: verb, example }
        : { says: 'bad-act.designation', word: device, act: verb, example },
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
    line.problem(noSuchDevice(view, name));
    return false;
  }
  if (kindsFor(verb).includes(found.kind)) return true;
  line.problem({
    says: 'act-not-possible',
    act: verb,
    name,
    kind: found.kind,
    possible: possibleActs(found),
    kinds: kindsFor(verb),
  });
  return false;
}
