/** The reader of the notation (docs/notation.md). */
import {
  type Circuit,
  circuit as circuitSchema,
  type Device,
  type Sheet,
  type Step,
  type Supply,
  sheet as sheetSchema,
} from '../../../shared/circuit.ts';
import type { Checked } from '../../../shared/problem.ts';
import type { CircuitProblemSaid } from '../../words/index.ts';
import { issueSaid } from '../issues.ts';
import { LIMITS } from '../limits.ts';
import { nearest } from '../nearest.ts';
import { type PartPlace, type Place, placeOf, type TextPlaces } from '../places.ts';
import { repeated, unsound } from '../soundness/index.ts';
import { LineReader } from './line-reader.ts';
import { wordsOf } from './line-words.ts';
import { quantityAt } from './quantity.ts';
import { type Declaration, finishDevice, finishSupply, readDevice, readSupply } from './read-declaration.ts';
import { readPath } from './read-path.ts';
import { Report } from './report.ts';
import { AS_FOUND, titleOf } from './title.ts';
import { KINDS } from './words.ts';

export interface ReadCircuit {
  readonly circuit: Circuit;
  readonly places: TextPlaces;
}

/** Reads a circuit; refuses it whole, with every mistake in it, when there is one. */
export function readCircuit(text: string): Checked<Circuit> {
  const read = readCircuitWithPlaces(text);
  return read.ok ? { ok: true, value: read.value.circuit } : read;
}

/** As `readCircuit`, and where each supply, device, sheet, path and stop stands. */
export function readCircuitWithPlaces(text: string): Checked<ReadCircuit> {
  const report = new Report();
  const lines = linesOf(text, report);
  if (!lines) return report.conclude(() => never());
  const draft: CircuitDraft = {
    title: undefined,
    asFound: false,
    supplies: [],
    devices: [],
    sheets: [],
    sheetPlaces: [],
    current: 1,
    paths: [],
    nameless: false,
  };
  for (const [index, line] of lines.entries()) {
    if (report.full) {
      report.leaveOff();
      break;
    }
    readLine(line, index + 1, draft, report);
  }
  const made = finish(draft, report);
  return report.conclude(() => made ?? never());
}

function never(): never {
  throw new RangeError('a refused circuit has no value');
}

/** A circuit while its lines are read. */
interface CircuitDraft {
  title: string | undefined;
  asFound: boolean;
  readonly supplies: Declaration[];
  readonly devices: Declaration[];
  readonly sheets: Sheet[];
  readonly sheetPlaces: Place[];
  current: number;
  readonly paths: {
    readonly sheet: number;
    readonly steps: readonly (Step | undefined)[];
    readonly places: readonly Place[];
  }[];
  /** A supply's name could not be read: ratings can't be asked for. */
  nameless: boolean;
}

function linesOf(text: string, report: Report): string[] | undefined {
  const refuse = (line: number, said: CircuitProblemSaid) => {
    report.add(said, { line, column: 1 });
    return undefined;
  };
  if (text.length > LIMITS.characters) {
    return refuse(1, { says: 'too-large.characters', characters: text.length, most: LIMITS.characters });
  }
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/);
  if (lines.length > LIMITS.lines) {
    return refuse(LIMITS.lines + 1, { says: 'too-large.lines', lines: lines.length, most: LIMITS.lines });
  }
  const long = lines.findIndex((line) => line.length > LIMITS.lineLength);
  if (long >= 0) {
    return refuse(long + 1, {
      says: 'too-large.line',
      characters: lines[long]!.length,
      most: LIMITS.lineLength,
    });
  }
  return lines;
}

function readLine(source: string, number: number, draft: CircuitDraft, report: Report): void {
  const trimmed = source.trim();
  if (trimmed === '') return;
  if (trimmed.startsWith('#')) {
    const first =
      draft.supplies.length + draft.devices.length + draft.paths.length + draft.sheets.length === 0;
    if (first && draft.title === undefined) draft.title = titleOf(trimmed.slice(1), source, number, report);
    return;
  }
  const line = new LineReader(wordsOf(source, number, report), number, source.trimEnd().length + 1, report);
  const first = line.peekWord();
  if (trimmed === AS_FOUND) {
    draft.asFound = true;
  } else if (first === 'supply') {
    const supply = readSupply(line);
    if (supply) draft.supplies.push(supply);
    else draft.nameless = true;
  } else if (first === 'sheet') {
    readSheet(line, draft);
  } else if (isPath(line)) {
    addPath(line, draft);
  } else if (
    first !== undefined &&
    (first.startsWith('-') || (KINDS as string[]).includes(line.peekWord(1) ?? ''))
  ) {
    const device = readDevice(line);
    if (device) draft.devices.push(device);
  } else {
    strange(line, first);
  }
}

/** A colon makes a path; also one after a designation alone, which then lacks its terminal. */
const isPath = (line: LineReader): boolean =>
  line.peekWord()?.includes(':') === true || /^(-[A-Z]+[0-9]+|[A-Z]):/.test(line.peekWord(1) ?? '');

function strange(line: LineReader, first: string | undefined): void {
  line.problem(
    first === undefined
      ? { says: 'unknown-line.text' }
      : { says: 'unknown-line', word: first, meant: nearest(first, ['supply', 'sheet', AS_FOUND]) },
  );
}

function readSheet(line: LineReader, draft: CircuitDraft): void {
  const place = { line: line.line, column: line.column };
  line.skip();
  const quantity = quantityAt(line);
  const { column } = line;
  if (!quantity) {
    line.problem({ says: 'bad-number.sheet' });
    return;
  }
  line.skip();
  const title = line.peek()?.kind === 'text' ? line.peek()!.text : undefined;
  const titleColumn = line.column;
  if (title !== undefined) line.skip();
  if (!line.done) {
    line.problem({ says: 'unexpected-option.sheet' });
    return;
  }
  const parsed = sheetSchema.safeParse({
    number: quantity.value,
    ...(title === undefined ? {} : { title }),
  });
  if (!parsed.success) {
    for (const issue of parsed.error.issues) {
      line.problem(issueSaid(issue), issue.path[0] === 'title' ? titleColumn : column);
    }
    return;
  }
  const known = draft.sheets.findIndex(({ number }) => number === quantity.value);
  draft.current = quantity.value;
  if (known < 0) {
    draft.sheets.push(parsed.data);
    draft.sheetPlaces.push(place);
  } else if (title !== undefined) {
    if (draft.sheets[known]!.title === undefined) draft.sheets[known] = parsed.data;
    else {
      line.problem({ says: 'repeated-option.sheetTitle', number: quantity.value }, titleColumn);
    }
  }
}

function addPath(line: LineReader, draft: CircuitDraft): void {
  const path = readPath(line);
  if (!path) return;
  if (!draft.sheets.some(({ number }) => number === draft.current)) {
    draft.sheets.push({ number: draft.current });
    draft.sheetPlaces.push({ line: line.line, column: 1 });
  }
  const places = path.columns.map((column) => ({ line: line.line, column }));
  draft.paths.push({ sheet: draft.current, steps: path.steps, places });
}

/** Puts the pieces together and checks what concerns more than one line. */
function finish(draft: CircuitDraft, report: Report): ReadCircuit | undefined {
  for (const [of, says] of [
    [draft.supplies, 'duplicate-supply'],
    [draft.devices, 'duplicate-designation'],
  ] as const) {
    for (const at of repeated(of.map(({ name }) => name))) {
      const { name, place } = of[at]!;
      report.add({ says, name }, place);
    }
  }
  const tolerated = new Set<string>();
  const supplies: Supply[] = [];
  const devices: Device[] = [];
  const places = { supplies: [] as PartPlace[], devices: [] as PartPlace[] };
  for (const declaration of draft.supplies) {
    const made = finishSupply(declaration);
    if (made && !supplies.some(({ name }) => name === made.name)) {
      supplies.push(made);
      places.supplies.push(declaration.place);
    } else tolerated.add(declaration.name);
  }
  const source = supplies.find(({ current }) => current !== '3AC');
  const rating = source && { volts: source.volts, current: source.current };
  const ratingKnown = supplies.length === draft.supplies.length && !draft.nameless && supplies.length > 0;
  const names = new Set<string>();
  for (const declaration of draft.devices) {
    const made = finishDevice(declaration, rating, ratingKnown);
    if (made && !names.has(made.name)) {
      devices.push(made);
      places.devices.push(declaration.place);
    } else tolerated.add(declaration.name);
    names.add(declaration.name);
  }
  if (draft.supplies.length === 0 && !draft.nameless) {
    report.add({ says: 'missing-supply' }, { line: 1, column: 1 });
  }
  const partial = {
    ...(draft.title === undefined ? {} : { title: draft.title }),
    ...(draft.asFound ? { asFound: true as const } : {}),
    supplies,
    devices,
    sheets: draft.sheets,
    paths: draft.paths.map(({ sheet, steps }) => ({ sheet, steps })),
  };
  const allPlaces: TextPlaces = {
    ...places,
    sheets: draft.sheetPlaces,
    paths: draft.paths.map((path) => path.places[0]!),
    steps: draft.paths.map((path) => path.places),
  };
  for (const { said, concern } of unsound(partial, tolerated)) {
    report.add(said, placeOf(partial, allPlaces, concern));
  }
  if (!report.clean) return undefined;
  const parsed = circuitSchema.safeParse(partial);
  if (parsed.success) return { circuit: parsed.data, places: allPlaces };
  for (const issue of parsed.error.issues) report.add(issueSaid(issue), { line: 1, column: 1 });
  return undefined;
}
