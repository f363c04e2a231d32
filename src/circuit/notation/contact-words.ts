/** Contacts in the notation: the form, a selector's positions, and terminal numbers where they are not the usual ones. */
import type { ContactSpec } from '../../../shared/circuit.ts';
import { type Form, isForm, numbersAt } from '../contact-numbers.ts';
import { parseTerminalList } from '../terminal-names.ts';
import type { LineReader } from './line-reader.ts';
import { quantityAt } from './quantity.ts';

/** Reads contacts as long as they follow one another; undefined when one of them was wrong (and is reported). */
export function readContacts(line: LineReader, withPositions: boolean): ContactSpec[] | undefined {
  const contacts: ContactSpec[] = [];
  let sound = true;
  for (let form = line.peekWord(); isForm(form); form = line.peekWord()) {
    line.skip();
    const place = contacts.length + 1;
    const positions = withPositions ? readPositions(line) : undefined;
    const terminals = readNumbers(line, form, place);
    if (terminals === undefined) sound = false;
    contacts.push({
      form,
      terminals: terminals ?? numbersAt(form, place),
      ...(positions ? { positions } : {}),
    });
  }
  return sound ? contacts : undefined;
}

function readPositions(line: LineReader): string[] | undefined {
  const word = line.peekWord();
  if (word === undefined || isForm(word) || word.includes('-')) return undefined;
  line.skip();
  return word.split('+');
}

/** The numbers that follow, or the usual ones where none follow; undefined when they are wrong. */
function readNumbers(line: LineReader, form: Form, place: number): string[] | undefined {
  const usual = numbersAt(form, place);
  const word = line.peekWord();
  if (word === undefined || !looksLikeNumbers(line, word)) return usual;
  const { column } = line;
  line.skip();
  const terminals = parseTerminalList(word);
  if (terminals?.length === usual.length) return terminals;
  line.problem({ says: 'contact-terminals.written', word, form, usual: usual.join('-') }, column);
  return undefined;
}

function looksLikeNumbers(line: LineReader, word: string): boolean {
  if (quantityAt(line)?.unit !== undefined) return false;
  return /^[0-9]/.test(word) || /^[A-Z0-9+]+-/.test(word);
}

/** Canonical: numbers only where they are not the ones of the contact's place in the list. */
export function contactWords(contacts: readonly ContactSpec[]): string {
  return contacts
    .flatMap(({ form, terminals, positions }, index) => {
      const numbers = terminals.join('-');
      const usual = numbersAt(form, index + 1).join('-');
      return [form, ...(positions ? [positions.join('+')] : []), ...(numbers === usual ? [] : [numbers])];
    })
    .join(' ');
}
