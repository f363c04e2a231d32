/** What can be wrong with the text of a circuit. */
import { type StatementOf, say } from '../../statement.ts';
import { speech } from '../speech.ts';
import { article, asMeant, type Slip, shown } from './parts.ts';

/** A kind of device, or `supply`. */
interface Of {
  readonly of: string;
}

/** What an option looks like on a line. */
const options = {
  written: ({ as }: { as: string }) => as,
  text: '"text"',
  texts: '"text" "text of point 1" "text of point 2"',
  auxiliaries: '22 or make 13-14 break 21-22',
};
export type OptionSaid = StatementOf<typeof options>;

interface Usage extends Of {
  readonly options: readonly OptionSaid[];
}
const usage = (goes: Usage): string =>
  `What goes here: ${article(goes.of)}: ${goes.options.map((option) => `[${say(options, option)}]`).join(' ')}.`;

/** What a line can't do without. */
const lacking = {
  contact: 'a contact, such as make or break',
  delay: 'its time, such as 5 s',
  count: 'how many there are, such as 4',
  on: 'how long it is on, such as 0.5 s on',
  off: 'how long it is off, such as 0.5 s off',
  positions: 'its positions, such as Off/Hand/Auto',
  winding: 'the voltage of one winding, such as 230 V',
  inputType: ({ types }: { types: readonly string[] }) => `the type of input: ${types.join(', ')}`,
  voltage: 'its voltage and kind of current, such as 24 V AC',
};
export type LackingSaid = StatementOf<typeof lacking>;

const DIVIDE = 'Divide it into several circuits.';
const SHEET = 'Write it like sheet 2 "Controller inputs".';

export const notationProblems = {
  'bad-escape': {
    wrong: 'A backslash in a text stands before a quotation mark or another backslash.',
    right: 'Write \\\\ for a backslash and \\" for a quotation mark.',
  },
  'unclosed-quote': {
    wrong: 'This text has no closing quotation mark.',
    right: 'Close it on the same line with ".',
  },
  'text-too-long.title': ({ most }: { most: number }) => ({
    wrong: `The first comment is the title: ${most} characters at most.`,
    right: 'Put a short title before it, on a line of its own.',
  }),
  'too-many-problems': ({ most }: { most: number }) => ({
    wrong: `There are more than ${most} mistakes; the others are not listed.`,
    right: 'Correct these first and read the circuit again.',
  }),
  'too-large.characters': ({ characters, most }: { characters: number; most: number }) => ({
    wrong: `This is too long to be read: ${characters} characters, at most ${most}.`,
    right: DIVIDE,
  }),
  'too-large.lines': ({ lines, most }: { lines: number; most: number }) => ({
    wrong: `There are ${lines} lines; at most ${most} are read.`,
    right: DIVIDE,
  }),
  'too-large.line': ({ characters, most }: { characters: number; most: number }) => ({
    wrong: `This line has ${characters} characters; at most ${most} are read.`,
    right: 'Break it into several lines.',
  }),
  'unknown-line': ({ word, ...slip }: Slip & { word: string }) => ({
    wrong: `A line can't begin with ${shown(word)}.`,
    right: asMeant(
      slip,
      'A line is a supply (supply A 24 V AC), a device (-K3 relay), a path (A:L  -K3:A1-A2  A:N), a sheet (sheet 2) or a comment (# ...).',
    ),
  }),
  'unknown-line.text': {
    wrong: "A line can't begin with a text.",
    right:
      'A line is a supply (supply A 24 V AC), a device (-K3 relay), a path (A:L  -K3:A1-A2  A:N), a sheet (sheet 2) or a comment (# ...).',
  },
  'missing-supply': {
    wrong: 'The circuit has no supply.',
    right: 'Begin with one, such as: supply A 24 V AC.',
  },

  'bad-number.sheet': { wrong: 'A sheet needs its number.', right: SHEET },
  'unexpected-option.sheet': {
    wrong: 'A sheet has a number and a title, nothing more.',
    right: SHEET,
  },
  'repeated-option.sheetTitle': ({ number }: { number: number }) => ({
    wrong: `Sheet ${number} has a title already.`,
    right: `To go on with that sheet write: sheet ${number}.`,
  }),

  'bad-supply-name': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} can't be the name of a supply.`,
    right: 'A supply is named by one capital letter: supply A 24 V AC.',
  }),
  'bad-supply-name.none': {
    wrong: 'A supply needs a name.',
    right: 'A supply is named by one capital letter: supply A 24 V AC.',
  },
  'bad-designation': ({ word, ...slip }: Slip & { word: string }) => ({
    wrong: `${shown(word)} is no reference designation.`,
    right: asMeant(slip, 'It has a hyphen, one to three capitals and a number: -K3.'),
  }),
  'unknown-kind': ({ word, kinds, ...slip }: Slip & { word: string; kinds: readonly string[] }) => ({
    wrong: `${shown(word)} is no kind of device.`,
    right: asMeant(slip, `There are: ${kinds.join(', ')}.`),
  }),
  'unknown-kind.none': ({ name, kinds }: { name: string; kinds: readonly string[] }) => ({
    wrong: `What kind of device is ${name}?`,
    right: `There are: ${kinds.join(', ')}.`,
  }),
  'repeated-option': ({ of, option }: Of & { option: OptionSaid }) => ({
    wrong: `This is said twice of ${article(of)}.`,
    right: `Write it once: ${say(options, option)}.`,
  }),
  'missing-option': ({ of, lacks }: Of & { lacks: LackingSaid }) => ({
    wrong: `What is missing for ${article(of)}: ${say(lacking, lacks)}.`,
    right: 'Add it at the end of the line.',
  }),
  'missing-rating': ({ name }: { name: string }) => ({
    wrong: `${name} has no rating, and there is no AC or DC supply to take it from.`,
    right: 'Write what it is made for at the end of the line: 230 V AC.',
  }),
  'missing-current': ({
    volts,
    currents,
    ...slip
  }: Slip & { volts: number; currents: readonly string[] }) => ({
    wrong: `${volts} V of which kind of current?`,
    right: asMeant(slip, `Write ${speech.or(currents.map((current) => `${volts} V ${current}`))}.`),
  }),
  'contact-terminals.written': ({ word, form, usual }: { word: string; form: string; usual: string }) => ({
    wrong: `${shown(word)} are not the terminals of ${article(form)} contact.`,
    right:
      form === 'changeover'
        ? `It has three, the common first, then the break leg and the make leg: ${usual}.`
        : `It has two, with a hyphen between them: ${usual}.`,
  }),

  'unexpected-option.text': (goes: Usage) => ({
    wrong: 'There is no place for this text.',
    right: usage(goes),
  }),
  'unexpected-option.quantity': ({ source, unit, ...goes }: Usage & { source: string; unit: string }) => ({
    wrong: `"${source} ${unit}" doesn't belong to ${article(goes.of)}.`,
    right: usage(goes),
  }),
  'unexpected-option': ({ word, ...goes }: Usage & { word: string }) => ({
    wrong: `"${word}" doesn't belong to ${article(goes.of)}, or not here.`,
    right: usage(goes),
  }),
  'unknown-unit': ({ unit, meant, ...goes }: Usage & Slip & { unit: string }) => ({
    wrong: `${shown(unit)} is no unit that is used here.`,
    right: asMeant({ meant }, usage(goes)),
  }),
  'missing-unit': ({ source, ...goes }: Usage & { source: string }) => ({
    wrong: `The number ${source} has no unit.`,
    right: `Write what it is, such as ${source} V or ${source} poles. ${usage(goes)}`,
  }),
  'bad-number': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is no number.`,
    right: 'A number has digits and at most one point, without a sign: 24 or 3.3.',
  }),
  'comment-in-line': {
    wrong: 'A comment stands on a line of its own.',
    right: 'Move it to a line that begins with #.',
  },
  'unknown-word': ({ word, meant, ...goes }: Usage & Slip & { word: string }) => ({
    wrong: `${shown(word)} is no word of the notation.`,
    right: asMeant({ meant }, usage(goes)),
  }),

  'path-length': {
    wrong: 'A path has at least two stops: a single one joins nothing.',
    right: 'Write where the conductor goes on to, such as A:L  -F1:1-2.',
  },
  'path-length.most': ({ stops, most }: { stops: number; most: number }) => ({
    wrong: `This path has ${stops} stops; at most ${most} are read.`,
    right: 'End it at a terminal and go on from there on the next line.',
  }),
  'unexpected-option.path': {
    wrong: 'A path has no text.',
    right: 'Write the text where the device is declared: -H1 lamp "Fan healthy".',
  },
  'missing-terminal': ({ name }: { name: string }) => ({
    wrong: `This path comes to ${name} and doesn't say at which terminal.`,
    right: name.startsWith('-')
      ? `Write the terminal after a colon: ${name}:13 or -K3:13-14.`
      : `Write the terminal after a colon: ${name}:L or A:N.`,
  }),
  'missing-terminal.afterColon': ({ name }: { name: string }) => ({
    wrong: `This path comes to ${name} and doesn't say at which terminal.`,
    right: `Write the terminal after the colon: ${name}:13 or ${name}:13-14.`,
  }),
  'bad-stop': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is no stop on a path.`,
    right: 'A stop is a device and its terminals: -K3:11-12.',
  }),
  'bad-stop.terminals': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} are no terminals.`,
    right: 'A stop has one terminal, or two with a hyphen between them: -K3:A1 or -K3:A1-A2.',
  }),
  'bad-designation.stop': ({ word, ...slip }: Slip & { word: string }) => ({
    wrong: `${shown(word)} is neither a reference designation nor a supply.`,
    right: asMeant(slip, 'Write a device such as -K3, or a supply such as A.'),
  }),
};
