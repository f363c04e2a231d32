/**
 * Which terminals have to be wired? `ends: A:L -H1:X1` (the loose ends, of the conductor that comes and of the one that
 * goes on), `choices:` a pair of terminals a line, `wanted:` a state a line, `-H1 lit after press -S1` or `-H1 dark at
 * first`, and `answer:` one of the choices.
 */
import type { Circuit, Step } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import { nearest, parseTerminalRef, readActs } from '../../../circuit/index.ts';
import { type Field, linesOfField, type Piece } from '../fields.ts';
import { askableIn } from '../state-words.ts';
import { readPair } from './terminal-pair.ts';
import type { KindInput, KindReader } from './types.ts';

type Wanted = QuestionOf<'wiring'>['wanted'][number];

const MOST_CHOICES = 8;
const MOST_WANTED = 6;

export const wiringReader: KindReader = {
  kind: 'wiring',
  keys: ['ends', 'choices', 'wanted'],
  read(input) {
    const { base, need, report } = input;
    const [endsField, choicesField] = [need('ends'), need('choices')];
    const [wantedField, answerField] = [need('wanted'), need('answer')];
    const pairOf = (piece: Piece | undefined, field: Field) =>
      readPair(piece ?? { text: '', position: field.position }, base.circuit, report);
    const ends = endsField && pairOf(linesOfField(endsField)[0], endsField);
    const choices = choicesField && readAll(choicesField, 2, MOST_CHOICES, input, pairOf);
    const wanted =
      wantedField && readAll(wantedField, 1, MOST_WANTED, input, (piece) => readWanted(piece, input));
    const answer = answerField && pairOf(linesOfField(answerField)[0], answerField);
    if (!ends || !choices || !wanted || !answer) return undefined;
    const choice = choices.findIndex((pair) => pair.join(' ') === answer.join(' '));
    if (choice < 0) {
      const pairs = choices.map((pair) => pair.join(' '));
      report.add({ says: 'bank-unknown-item.choice', pair: answer.join(' '), pairs }, answerField.position);
      return undefined;
    }
    return {
      question: { kind: 'wiring', ...base, ends, choices, wanted },
      answer: { kind: 'wiring', choice },
      answered: new Map([['choice', { position: answerField.position }]]),
      drawn: wired(base.circuit, ends, answer),
    };
  },
};

/** The circuit with the loose ends joined to a pair of terminals. */
function wired(circuit: Circuit, [from, to]: [string, string], [enter, leave]: [string, string]): Circuit {
  const stop = (ref: string): Step => {
    const { device, terminal } = parseTerminalRef(ref)!;
    return { device, enter: terminal };
  };
  const sheet = circuit.paths[0]?.sheet ?? 1;
  const paths = [
    [from, enter],
    [leave, to],
  ].map((ends) => ({ sheet, steps: ends.map(stop) }));
  return { ...circuit, paths: [...circuit.paths, ...paths] };
}

/** Reads one thing a line; undefined when one of them is wrong or their number is. */
function readAll<T>(
  field: Field,
  least: number,
  most: number,
  { report }: KindInput,
  read: (piece: Piece, field: Field) => T | undefined,
): T[] | undefined {
  const pieces = linesOfField(field);
  if (pieces.length < least || pieces.length > most) {
    report.add(
      { says: 'bank-field.lines', key: field.key, lines: pieces.length, least, most },
      field.keyPosition,
    );
    return undefined;
  }
  const made = pieces.map((piece) => read(piece, field));
  return made.includes(undefined) ? undefined : (made as T[]);
}

function readWanted(piece: Piece, { base, report }: KindInput): Wanted | undefined {
  const match = /^(\S+)\s+(\S+)\s+(?:at first|after\s+(.+))$/.exec(piece.text);
  if (!match) {
    report.add({ says: 'bank-field.wanted', text: piece.text }, piece.position);
    return undefined;
  }
  const [, load = '', state = '', done = ''] = match;
  const askable = askableIn(base.circuit, ['lamp', 'input']);
  const words = askable.get(load);
  if (!words?.includes(state)) {
    const names = [...askable.keys()];
    report.add(
      words
        ? { says: 'bank-unknown-state.wanted', state, item: load, states: words }
        : {
            says: 'bank-unknown-item',
            item: load,
            what: 'lampOrInput',
            meant: nearest(load, names),
            names,
          },
      piece.position,
    );
    return undefined;
  }
  const acts = readActs(done, base.circuit);
  if (acts.ok) return { acts: acts.value, load, state: state as Wanted['state'] };
  report.within(acts.problems, {
    line: piece.position.line,
    column: piece.position.column + piece.text.length - done.length,
  });
  return undefined;
}
