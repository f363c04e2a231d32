/** The options of supplies and devices: how each is recognised on a line, read into a draft and written again. */
import type { ContactSpec } from '../../../shared/circuit.ts';
import type { OptionSaid } from '../../words/index.ts';
import { auxiliaryRow, isForm } from '../contact-numbers.ts';
import { nearest } from '../nearest.ts';
import { contactWords, readContacts } from './contact-words.ts';
import type { LineReader } from './line-reader.ts';
import { quote } from './line-words.ts';
import { type Quantity, quantityAt, secondsOf } from './quantity.ts';

/** A supply or device as far as it is read. */
export interface Draft {
  readonly values: Record<string, unknown>;
  /** Where each value stands. */
  readonly columns: Map<string, number>;
  /** Something in it was wrong: it is reported, and the draft must not be used. */
  broken: boolean;
}

export interface Option {
  /** The fields it fills; each may be filled once. */
  readonly fields: readonly string[];
  /** As it is shown in a hint. */
  readonly usage: OptionSaid;
  /** Words and units that belong to it, to tell a misplaced word from an unknown one. */
  readonly words: readonly string[];
  /** Whether the next words are this option. */
  starts(line: LineReader, draft: Draft): boolean;
  read(line: LineReader, draft: Draft): void;
  /** Its words in canonical form, empty for what needn't be written. */
  write(values: Readonly<Record<string, unknown>>): string;
}

export function put(draft: Draft, field: string, value: unknown, column: number): void {
  draft.values[field] = value;
  draft.columns.set(field, column);
}

function take(line: LineReader): Quantity {
  const quantity = quantityAt(line)!;
  line.skip(quantity.words);
  return quantity;
}

const written = (as: string): OptionSaid => ({ says: 'written', as });

const nextUnit = (line: LineReader): string | undefined => quantityAt(line)?.unit;

/** A number with its own unit: `2 poles`, `6 A`, `5 W`. Written unless it is what it would be anyway. */
export const measure = (field: string, unit: string, unitWord = unit, otherwise?: number): Option => ({
  fields: [field],
  usage: written(`${otherwise === undefined || otherwise === 1 ? 2 : otherwise} ${unitWord}`),
  words: [unit, unitWord],
  starts: (line) => nextUnit(line) === unit,
  read(line, draft) {
    const { value, column } = take(line);
    put(draft, field, value, column);
  },
  write: (values) => {
    const value = values[field];
    if (value === undefined || value === otherwise) return '';
    return `${value} ${unit === 'poles' && value === 1 ? 'pole' : unitWord}`;
  },
});

/** A bare number, the first thing after the kind: `inputs 4`. */
export const bareCount: Option = {
  fields: ['count'],
  usage: written('4'),
  words: [],
  starts: (line) => quantityAt(line) !== undefined && nextUnit(line) === undefined,
  read(line, draft) {
    const { value, column } = take(line);
    put(draft, 'count', value, column);
  },
  write: (values) => String(values['count']),
};

/** `24 V AC`. With `flat` the fields are the draft's own (a supply); else they make its `rating`. */
export const voltage = (currents: readonly string[], flat: boolean): Option => ({
  fields: flat ? ['volts', 'current'] : ['rating'],
  usage: written(`24 V ${currents.join('|')}`),
  words: ['V', ...currents],
  starts: (line) => nextUnit(line) === 'V',
  read(line, draft) {
    const { value: volts, column } = take(line);
    const current = line.peekWord();
    if (current === undefined || !currents.includes(current)) {
      draft.broken = true;
      const meant = current ? nearest(current, currents) : undefined;
      line.problem({ says: 'missing-current', volts, meant, currents });
      // A slip such as "ac" is that word; anything else is the next option.
      if (current && currents.includes(current.toUpperCase())) line.skip();
      return;
    }
    line.skip();
    if (!flat) {
      put(draft, 'rating', { volts, current }, column);
      return;
    }
    put(draft, 'volts', volts, column);
    put(draft, 'current', current, column);
  },
  write: (values) => {
    const { volts, current } = (flat ? values : (values['rating'] ?? {})) as {
      volts?: number;
      current?: string;
    };
    return volts === undefined ? '' : `${volts} V ${current}`;
  },
});

/** `5 s`, also in ms and min. */
export const delay: Option = {
  fields: ['seconds'],
  usage: written('5 s'),
  words: ['ms', 's', 'min'],
  starts: (line) => ['ms', 's', 'min'].includes(nextUnit(line) ?? ''),
  read(line, draft) {
    const quantity = take(line);
    put(draft, 'seconds', secondsOf(quantity), quantity.column);
  },
  write: (values) => `${values['seconds']} s`,
};

/** `0.5 s on` and `0.5 s off`. */
export const phase = (field: 'on' | 'off'): Option => ({
  fields: [field],
  usage: written(`0.5 s ${field}`),
  words: ['ms', 's', 'min', field],
  starts(line) {
    const quantity = quantityAt(line);
    return (
      quantity !== undefined && secondsOf(quantity) !== undefined && line.peekWord(quantity.words) === field
    );
  },
  read(line, draft) {
    const quantity = take(line);
    line.skip();
    put(draft, field, secondsOf(quantity), quantity.column);
  },
  write: (values) => `${values[field]} s ${field}`,
});

/** One word out of a list. */
export const oneOf = (field: string, choices: readonly string[]): Option => ({
  fields: [field],
  usage: written(choices.join('|')),
  words: choices,
  starts: (line) => choices.includes(line.peekWord() ?? ''),
  read(line, draft) {
    put(draft, field, line.peekWord(), line.column);
    line.skip();
  },
  write: (values) => (values[field] === undefined ? '' : String(values[field])),
});

export const earthed: Option = {
  fields: ['earthed'],
  usage: written('earthed'),
  words: ['earthed'],
  starts: (line) => line.peekWord() === 'earthed',
  read(line, draft) {
    put(draft, 'earthed', true, line.column);
    line.skip();
  },
  write: (values) => (values['earthed'] ? 'earthed' : ''),
};

/** The text beside the device on the drawing. */
export const label: Option = {
  fields: ['text'],
  usage: { says: 'text' },
  words: [],
  starts: (line) => line.peek()?.kind === 'text',
  read(line, draft) {
    put(draft, 'text', line.peek()?.text, line.column);
    line.skip();
  },
  write: (values) => (values['text'] === undefined ? '' : quote(String(values['text']))),
};

/** The first text is the device's, the others its points'; after the word `points` all are. */
export const labelAndPoints: Option = {
  fields: ['text', 'points'],
  usage: { says: 'texts' },
  words: ['points'],
  starts: (line) => line.peek()?.kind === 'text' || line.peekWord() === 'points',
  read(line, draft) {
    const column = line.column;
    if (line.peek()?.kind === 'text') label.read(line, draft);
    if (line.peekWord() === 'points') line.skip();
    const points: string[] = [];
    for (let word = line.peek(); word?.kind === 'text'; word = line.peek()) {
      points.push(word.text);
      line.skip();
    }
    put(draft, 'points', points, column);
  },
  write: (values) => {
    const points = (values['points'] as readonly string[]).map(quote);
    const own = label.write(values);
    return [own, own === '' && points.length > 0 ? 'points' : '', ...points].filter(Boolean).join(' ');
  },
};

/** `Off/Hand/Auto`, the drawn position first. */
export const positions: Option = {
  fields: ['positions'],
  usage: written('Off/Hand/Auto'),
  words: [],
  starts(line, draft) {
    const next = line.peekWord();
    return next !== undefined && !isForm(next) && draft.values['positions'] === undefined;
  },
  read(line, draft) {
    put(draft, 'positions', line.peekWord()!.split('/'), line.column);
    line.skip();
  },
  write: (values) => (values['positions'] as readonly string[]).join('/'),
};

/** `make 13-14 break 21-22`; a selector's with the positions they depend on. */
export const contacts = (withPositions = false): Option => ({
  fields: ['contacts'],
  usage: written(withPositions ? 'make Hand break Hand+Auto 21-22' : 'make 13-14 break 21-22'),
  words: ['make', 'break', 'changeover'],
  starts: (line) => isForm(line.peekWord()),
  read(line, draft) {
    const column = line.column;
    const read = readContacts(line, withPositions);
    if (read === undefined) draft.broken = true;
    else put(draft, 'contacts', read, column);
  },
  write: (values) => contactWords(values['contacts'] as readonly ContactSpec[]),
});

const rowOf = (figure: string): ContactSpec[] => auxiliaryRow(Number(figure[0]), Number(figure[1]));

function figureOf(specs: readonly ContactSpec[]): string | undefined {
  const makes = specs.filter(({ form }) => form === 'make').length;
  const figure = `${makes}${specs.length - makes}`;
  if (specs.length === 0 || figure.length > 2) return undefined;
  return contactWords(rowOf(figure)) === contactWords(specs) ? figure : undefined;
}

/** A contactor's auxiliaries: the two-digit figure, or one contact after another. */
export const auxiliaries: Option = {
  ...contacts(),
  usage: { says: 'auxiliaries' },
  starts: (line) => isForm(line.peekWord()) || isFigure(line),
  read(line, draft) {
    if (!isFigure(line)) {
      contacts().read(line, draft);
      return;
    }
    const { source, column } = take(line);
    put(draft, 'contacts', rowOf(source), column);
  },
  write: (values) => {
    const specs = values['contacts'] as readonly ContactSpec[];
    return figureOf(specs) ?? contactWords(specs);
  },
};

function isFigure(line: LineReader): boolean {
  const quantity = quantityAt(line);
  return quantity !== undefined && quantity.unit === undefined && /^[0-9]{2}$/.test(line.peekWord() ?? '');
}
