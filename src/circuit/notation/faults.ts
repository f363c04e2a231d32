/** What is wrong with a circuit, as text: `-K3:14 broken; -K3:11-14 dirty 500 ohm`. */
import type { Circuit, TerminalRef } from '../../../shared/circuit.ts';
import type { Checked } from '../../../shared/problem.ts';
import { type Fault, fault as faultSchema } from '../../../shared/scenario.ts';
import type { FaultWord } from '../../words/index.ts';
import { issueSaid } from '../issues.ts';
import { nearest } from '../nearest.ts';
import {
  DESIGNATION,
  parseTerminalList,
  parseTerminalRef,
  SUPPLY_NAME,
  terminalRefOf,
} from '../terminal-names.ts';
import { circuitView } from '../view.ts';
import { faultInCircuit } from './fault-checks.ts';
import type { LineReader } from './line-reader.ts';
import { quantityAt } from './quantity.ts';
import { Report } from './report.ts';
import { statementsOf } from './statements.ts';

/** Of a dirty contact whose resistance isn't stated; enough to keep a coil from operating (common practice, no source). */
const DIRTY_OHMS = 1000;

const WORDS: readonly FaultWord[] = [
  'broken',
  'welded',
  'dirty',
  'open',
  'shorted',
  'blown',
  'crossed',
  'stuck',
];

/** Reads faults separated by `;` or line ends; with a circuit each is checked against it. */
export function readFaults(text: string, circuit?: Circuit): Checked<Fault[]> {
  const report = new Report();
  const view = circuit && circuitView(circuit);
  const faults: Fault[] = [];
  for (const line of statementsOf(text, 'faults', report)) {
    const { column } = line;
    const fault = readFault(line);
    if (!fault) continue;
    const parsed = faultSchema.safeParse(fault);
    if (!parsed.success) {
      for (const issue of parsed.error.issues) line.problem(issueSaid(issue), column);
      continue;
    }
    const wrong = view && faultInCircuit(parsed.data, view, faults);
    if (wrong) line.problem(wrong, column);
    else faults.push(parsed.data);
  }
  return report.conclude(() => faults);
}

function readFault(line: LineReader): Fault | undefined {
  const places: string[] = [];
  while (line.peekWord() !== undefined && !(WORDS as readonly string[]).includes(line.peekWord()!)) {
    places.push(line.peekWord()!);
    line.skip();
  }
  const word = line.peekWord() as FaultWord | undefined;
  if (word === undefined) {
    const last = places.at(-1) ?? '';
    const meant = /^[a-z]/i.test(last) ? nearest(last, WORDS) : undefined;
    line.problem({ says: 'unknown-fault', meant, words: WORDS });
    return undefined;
  }
  line.skip();
  const fault = faultOf(word, places, line);
  if (fault && line.done) return fault;
  if (fault) line.problem({ says: 'bad-fault.tooMuch', word: line.peek()!.text, fault: word });
  else line.problem({ says: 'bad-fault', places: places.join(' '), fault: word }, line.words[0]!.column);
  return undefined;
}

function faultOf(word: FaultWord, places: readonly string[], line: LineReader): Fault | undefined {
  switch (word) {
    case 'blown':
    case 'stuck': {
      const [device = ''] = places;
      return places.length === 1 && DESIGNATION.test(device) ? { kind: word, device } : undefined;
    }
    case 'broken': {
      const refs = singles(places);
      if (refs?.length === 1) return { kind: 'loose', at: refs[0]! };
      return refs?.length === 2 ? { kind: 'cut', from: refs[0]!, to: refs[1]! } : undefined;
    }
    case 'crossed': {
      const refs = singles(places);
      return refs?.length === 2 ? { kind: 'crossed', one: refs[0]!, other: refs[1]! } : undefined;
    }
    case 'dirty': {
      const ends = endsOf(places);
      const ohms = readOhms(line);
      return ends && ohms !== undefined ? { kind: 'dirty', ...ends, ohms } : undefined;
    }
    case 'welded':
    case 'open':
    case 'shorted': {
      const ends = endsOf(places);
      return ends && { kind: word, ...ends };
    }
  }
}

/** Places that are one terminal each. */
function singles(places: readonly string[]): TerminalRef[] | undefined {
  const refs = places.filter((place) => parseTerminalRef(place)) as TerminalRef[];
  return refs.length === places.length ? refs : undefined;
}

/** The two ends of a contact, coil or load: `-K3:11-14`. */
function endsOf(places: readonly string[]): { from: TerminalRef; to: TerminalRef } | undefined {
  const [place = ''] = places;
  const colon = place.indexOf(':');
  const device = place.slice(0, colon);
  const names = parseTerminalList(place.slice(colon + 1));
  const named = DESIGNATION.test(device) || SUPPLY_NAME.test(device);
  if (places.length !== 1 || !named || names?.length !== 2) return undefined;
  return { from: terminalRefOf(device, names[0]!), to: terminalRefOf(device, names[1]!) };
}

const MULTIPLES: Readonly<Record<string, number>> = { ohm: 1, kohm: 1e3, Mohm: 1e6 };

function readOhms(line: LineReader): number | undefined {
  if (line.done) return DIRTY_OHMS;
  const quantity = quantityAt(line);
  const multiple = quantity?.unit === undefined ? undefined : MULTIPLES[quantity.unit];
  if (!quantity || multiple === undefined) return undefined;
  line.skip(quantity.words);
  return quantity.value * multiple;
}

/** The faults as text; `readFaults` gives them back. */
export const writeFaults = (faults: readonly Fault[]): string => faults.map(writeFault).join('; ');

function writeFault(fault: Fault): string {
  switch (fault.kind) {
    case 'loose':
      return `${fault.at} broken`;
    case 'cut':
      return `${fault.from} ${fault.to} broken`;
    case 'crossed':
      return `${fault.one} ${fault.other} crossed`;
    case 'blown':
    case 'stuck':
      return `${fault.device} ${fault.kind}`;
    case 'dirty':
      return `${endsText(fault)} dirty ${fault.ohms} ohm`;
    case 'welded':
    case 'open':
    case 'shorted':
      return `${endsText(fault)} ${fault.kind}`;
  }
}

/** Both ends are of one device: `-K3:11-14`. */
export const endsText = ({ from, to }: { readonly from: string; readonly to: string }): string =>
  `${from}-${to.slice(to.indexOf(':') + 1)}`;
