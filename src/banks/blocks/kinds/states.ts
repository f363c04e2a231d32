/** Lists of items and of their states: `-H1, -H2` and `-H1 lit, -H2 dark`. */
import { anyOf, didYouMean, shown, someOf } from '../../../circuit/wording.ts';
import type { BankCode } from '../../problem-codes.ts';
import type { BankReport } from '../../report.ts';
import type { Spot } from '../../source.ts';
import { type Field, type Piece, piecesOf } from '../fields.ts';
import type { Askable } from '../state-words.ts';
import type { KindInput } from './types.ts';

/** An item that is asked about; `key` names it in the answer. */
export interface AskedItem {
  readonly key: string;
  readonly item: string;
  /** Sequences: after how many acts. */
  readonly after?: number;
  readonly words: readonly string[];
  readonly piece: Piece;
}

/** Reads one asked item of a list from its words; undefined when it is wrong (reported). */
type ItemReader = (words: string, piece: Piece) => AskedItem | undefined;

/** For lists of plain items. `what`: `a lamp of this circuit`. */
export const plainItem =
  (askable: Askable, what: string, report: BankReport): ItemReader =>
  (text, piece) => {
    const words = askable.get(text);
    if (words) return { key: text, item: text, words, piece };
    const names = [...askable.keys()];
    report.add(
      'bank-unknown-item',
      piece.spot,
      `${shown(text)} is not ${what}.`,
      names.length === 0
        ? 'There is none in this circuit.'
        : `${didYouMean(text, names)}There are: ${someOf(names)}.`,
    );
    return undefined;
  };

function readAsked(field: Field, read: ItemReader, report: BankReport): readonly AskedItem[] | undefined {
  const items: AskedItem[] = [];
  let sound = true;
  for (const piece of piecesOf(field)) {
    const item = read(piece.text, piece);
    if (item && items.some(({ key }) => key === item.key)) {
      report.add('bank-repeated-item', piece.spot, `${shown(piece.text)} is there twice.`, 'Leave one out.');
      sound = false;
    } else if (item) items.push(item);
    else sound = false;
  }
  if (sound && items.length > 0) return items;
  if (sound)
    report.add('bank-field', field.keySpot, 'Nothing is asked here.', 'Write what is asked: asked: -H1.');
  return undefined;
}

/** States by the items' keys; see `AskedQuestion` for `answered`. */
interface ReadStates {
  readonly states: Record<string, string>;
  readonly answered: ReadonlyMap<string, Piece>;
}

/** Reads states by item. An item is everything but the second word: `-H1 lit`, and in a sequence `-H1 lit after 2`. */
export function readStates(
  field: Field,
  asked: readonly AskedItem[],
  report: BankReport,
): ReadStates | undefined {
  const states: Record<string, string> = {};
  const answered = new Map<string, Piece>();
  let sound = true;
  const wrong = (code: BankCode, spot: Spot, message: string, hint: string): void => {
    sound = false;
    report.add(code, spot, message, hint);
  };
  for (const { text, spot } of piecesOf(field)) {
    const [name = '', state = '', ...rest] = text.split(/\s+/);
    const written = [name, ...rest].join(' ');
    const item = asked.find((each) => each.piece.text.split(/\s+/).join(' ') === written);
    if (!item)
      wrong(
        'bank-unknown-item',
        spot,
        `${shown(written)} is not asked here.`,
        `Asked are ${someOf(asked.map(({ piece }) => piece.text))}; write each with its state.`,
      );
    else if (!item.words.includes(state))
      wrong(
        'bank-unknown-state',
        spot,
        state === '' ? `What is the state of ${name}?` : `${shown(state)} is no state of ${name}.`,
        `It is ${anyOf(item.words)}: ${name} ${item.words[0]}.`,
      );
    else if (answered.has(item.key))
      wrong('bank-repeated-item', spot, `${shown(written)} is answered twice.`, 'Leave one out.');
    else {
      states[item.key] = state;
      answered.set(item.key, { text: written, spot });
    }
  }
  const left = asked.filter(({ key }) => !answered.has(key));
  if (sound && left.length > 0)
    wrong(
      'bank-missing-answer',
      field.keySpot,
      `The answer leaves out ${someOf(left.map(({ piece }) => piece.text))}.`,
      'Answer everything that is asked.',
    );
  return sound ? { states, answered } : undefined;
}

/** The fields `asked` and `answer` of a question about states. */
export function readAskedStates(
  { need, report }: KindInput,
  read: ItemReader,
): (ReadStates & { readonly asked: readonly AskedItem[] }) | undefined {
  const asked = need('asked');
  const answer = need('answer');
  const items = asked && readAsked(asked, read, report);
  const states = items && answer && readStates(answer, items, report);
  return states && { asked: items, ...states };
}
