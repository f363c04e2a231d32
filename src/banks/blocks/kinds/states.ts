/** Lists of items and of their states: `-H1, -H2` and `-H1 lit, -H2 dark`. */
import { nearest } from '../../../circuit/index.ts';
import type { AskedThing, BankProblemSaid } from '../../../words/index.ts';
import type { Position } from '../../position.ts';
import type { BankReport } from '../../report.ts';
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

/** For lists of plain items. `what`: what they have to be. */
export const plainItem =
  (askable: Askable, what: AskedThing, report: BankReport): ItemReader =>
  (text, piece) => {
    const words = askable.get(text);
    if (words) return { key: text, item: text, words, piece };
    const names = [...askable.keys()];
    report.add(
      { says: 'bank-unknown-item', item: text, what, meant: nearest(text, names), names },
      piece.position,
    );
    return undefined;
  };

function readAsked(field: Field, read: ItemReader, report: BankReport): readonly AskedItem[] | undefined {
  const items: AskedItem[] = [];
  let sound = true;
  for (const piece of piecesOf(field)) {
    const item = read(piece.text, piece);
    if (item && items.some(({ key }) => key === item.key)) {
      report.add({ says: 'bank-repeated-item', item: piece.text }, piece.position);
      sound = false;
    } else if (item) items.push(item);
    else sound = false;
  }
  if (sound && items.length > 0) return items;
  if (sound) report.add({ says: 'bank-field.nothingAsked' }, field.keyPosition);
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
  const wrong = (position: Position, said: BankProblemSaid): void => {
    sound = false;
    report.add(said, position);
  };
  for (const { text, position } of piecesOf(field)) {
    const [name = '', state = '', ...rest] = text.split(/\s+/);
    const written = [name, ...rest].join(' ');
    const item = asked.find((each) => each.piece.text.split(/\s+/).join(' ') === written);
    if (!item)
      wrong(position, {
        says: 'bank-unknown-item.notAsked',
        item: written,
        asked: asked.map(({ piece }) => piece.text),
      });
    else if (!item.words.includes(state))
      wrong(
        position,
        state === ''
          ? { says: 'bank-unknown-state.none', item: name, states: item.words }
          : { says: 'bank-unknown-state', state, item: name, states: item.words },
      );
    else if (answered.has(item.key)) wrong(position, { says: 'bank-repeated-item.answered', item: written });
    else {
      states[item.key] = state;
      answered.set(item.key, { text: written, position });
    }
  }
  const left = asked.filter(({ key }) => !answered.has(key));
  if (sound && left.length > 0)
    wrong(field.keyPosition, { says: 'bank-missing-answer', items: left.map(({ piece }) => piece.text) });
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
