/** One line that declares a supply or a device, read into a draft. */

import type { Device, Supply } from '../../../shared/circuit.ts';
import { type DeviceKind, device as deviceSchema, supply as supplySchema } from '../../../shared/circuit.ts';
import { issueSaid } from '../issues.ts';
import { nearest } from '../nearest.ts';
import type { PartPlace } from '../places.ts';
import { corrected, DESIGNATION, SUPPLY_NAME } from '../terminal-names.ts';
import { type Grammar, SUPPLY_GRAMMAR } from './grammar.ts';
import { GRAMMARS } from './grammars.ts';
import type { LineReader } from './line-reader.ts';
import { type Draft, type Option, put } from './options.ts';
import { refuse } from './refuse.ts';
import { ALL_WORDS, hasRating, KINDS } from './words.ts';

/** A declaration as far as it was read. `name` is known even when the rest is broken. */
export interface Declaration {
  readonly name: string;
  readonly draft: Draft;
  readonly place: PartPlace;
  readonly line: LineReader;
}

const newDraft = (): Draft => ({ values: {}, columns: new Map(), broken: false });

/** What is declared. */
type Of = DeviceKind | 'supply';

/** Reads options until the line ends; each word that belongs to none is reported and stepped over. */
function readOptions(line: LineReader, draft: Draft, of: Of, { options }: Grammar): void {
  const done = new Set<Option>();
  while (!line.done) {
    const option = options.find((each) => each.starts(line, draft));
    if (!option) {
      draft.broken = true;
      refuse(line, of, options, ALL_WORDS);
      continue;
    }
    if (done.has(option)) {
      draft.broken = true;
      line.problem({ says: 'repeated-option', of, option: option.usage });
    }
    done.add(option);
    option.read(line, draft);
  }
}

function complete(line: LineReader, draft: Draft, of: Of, { defaults, required }: Grammar): void {
  // A broken draft has had its say: what is missing may be the very word that was not understood.
  const asked = draft.broken ? [] : Object.entries(required);
  for (const [field, lacks] of asked) {
    if (draft.values[field] !== undefined) continue;
    draft.broken = true;
    line.problem({ says: 'missing-option', of, lacks });
  }
  for (const [field, value] of Object.entries(defaults)) {
    if (draft.values[field] === undefined) draft.values[field] = value;
  }
}

/** `supply A 24 V AC earthed "text"`. Undefined: it has no usable name. */
export function readSupply(line: LineReader): Declaration | undefined {
  const start = line.column;
  line.skip();
  const name = line.peekWord();
  if (name === undefined || !SUPPLY_NAME.test(name)) {
    line.problem(
      name === undefined ? { says: 'bad-supply-name.none' } : { says: 'bad-supply-name', word: name },
    );
    return undefined;
  }
  line.skip();
  const draft = newDraft();
  readOptions(line, draft, 'supply', SUPPLY_GRAMMAR);
  complete(line, draft, 'supply', SUPPLY_GRAMMAR);
  return { name, draft, place: { line: line.line, column: start, fields: draft.columns }, line };
}

/** `-K3 relay 2 poles "text"`. Undefined: it has no usable designation. */
export function readDevice(line: LineReader): Declaration | undefined {
  const { column } = line;
  const name = line.peekWord()!;
  line.skip();
  if (!DESIGNATION.test(name)) {
    line.problem({ says: 'bad-designation', word: name, meant: corrected(name) }, column);
    return undefined;
  }
  const draft = newDraft();
  const declaration = { name, draft, place: { line: line.line, column, fields: draft.columns }, line };
  const kind = readKind(line, name);
  if (kind === undefined) {
    draft.broken = true;
    return declaration;
  }
  draft.values['kind'] = kind;
  readOptions(line, draft, kind, GRAMMARS[kind]);
  complete(line, draft, kind, GRAMMARS[kind]);
  return declaration;
}

function readKind(line: LineReader, name: string): DeviceKind | undefined {
  const word = line.peekWord();
  if (word !== undefined && (KINDS as string[]).includes(word)) {
    line.skip();
    return word as DeviceKind;
  }
  line.problem(
    word === undefined
      ? { says: 'unknown-kind.none', name, kinds: KINDS }
      : { says: 'unknown-kind', word, meant: nearest(word, KINDS), kinds: KINDS },
  );
  return undefined;
}

/** The finished supply; undefined when something in it was wrong, which is then reported. */
export function finishSupply({ name, draft, line, place }: Declaration): Supply | undefined {
  if (draft.broken) return undefined;
  const parsed = supplySchema.safeParse({ name, ...draft.values });
  if (parsed.success) return parsed.data;
  reportIssues(parsed.error.issues, draft, line, place);
  return undefined;
}

/** The finished device. `rating` is what a rating left out is taken from; `ratingKnown` false: don't ask for one. */
export function finishDevice(
  { name, draft, line, place }: Declaration,
  rating: unknown,
  ratingKnown: boolean,
): Device | undefined {
  const kind = draft.values['kind'] as DeviceKind | undefined;
  if (draft.broken || kind === undefined) return undefined;
  if (hasRating(kind) && draft.values['rating'] === undefined) {
    if (rating === undefined) {
      if (ratingKnown) {
        line.problem({ says: 'missing-rating', name }, place.column);
      }
      return undefined;
    }
    put(draft, 'rating', rating, place.column);
  }
  const parsed = deviceSchema.safeParse({ name, ...draft.values });
  if (parsed.success) return parsed.data;
  reportIssues(parsed.error.issues, draft, line, place);
  return undefined;
}

function reportIssues(
  issues: Parameters<typeof issueSaid>[0][],
  draft: Draft,
  line: LineReader,
  { column }: PartPlace,
): void {
  for (const issue of issues) {
    const field = String(issue.path[0] ?? '');
    line.problem(issueSaid(issue), draft.columns.get(field) ?? column);
  }
}
