/** What can be wrong with a circuit although it could be read, and with its JSON. */
import type { FormName } from '../../../../shared/form-name.ts';
import type { StatementOf } from '../../statement.ts';
import { formCalled } from '../form-names.ts';
import { speech } from '../speech.ts';
import { capital } from '../text.ts';
import { article, asMeant, BOUNDS, type Slip, shown, someOf } from './parts.ts';

const NOUNS: Readonly<Record<string, string>> = {
  volts: 'voltage',
  amps: 'current in A',
  watts: 'power in W',
  seconds: 'time in seconds',
  on: 'time on in seconds',
  off: 'time off in seconds',
  poles: 'number of poles',
  mains: 'number of main poles',
  terminals: 'number of terminals',
  contacts: 'number of contacts',
  positions: 'number of positions',
  points: 'number of texts for the points',
  count: 'count',
  number: 'number of the sheet',
  ohms: 'resistance in ohms',
};

/** The noun of a field of the data. */
const nounOf = (field: string): string => NOUNS[field] ?? (field || 'value');

/** `devices[3].poles`: where in a JSON value it is; nothing where lines say that. */
interface At {
  readonly at?: string | undefined;
}
const placed = ({ at }: At, wrong: string): string => (at ? `${at}: ${wrong}` : wrong);

/** What is wrong with a single value. */
const valueProblems = {
  'text-too-long': ({ most, ...at }: At & { most: number }) => ({
    wrong: placed(at, `This text is too long: ${most} characters at most.`),
    right: 'Shorten it.',
  }),
  'out-of-range': ({
    field,
    bound,
    limit,
    ...at
  }: At & { field: string; bound: keyof typeof BOUNDS; limit: number }) => {
    const noun = nounOf(field);
    const within = BOUNDS[bound](limit);
    return {
      wrong: placed(at, `The ${noun} is ${within}.`),
      right:
        noun === 'voltage' || noun.includes(' in ')
          ? `Write a figure that is ${within}.`
          : `Write a number that is ${within}.`,
    };
  },
  'out-of-range.whole': ({ field, ...at }: At & { field: string }) => ({
    wrong: placed(at, `The ${nounOf(field)} has to be a whole number.`),
    right: 'Write it without a decimal point.',
  }),
  'out-of-range.number': ({ field, ...at }: At & { field: string }) => ({
    wrong: placed(at, `The ${nounOf(field)} has to be a number.`),
    right: 'Write it in digits.',
  }),
  'out-of-range.terminals': ({
    field,
    choices,
    ...at
  }: At & { field: string; choices: readonly string[] }) => ({
    wrong: placed(at, `The ${nounOf(field)} is ${speech.or(choices)}.`),
    right: `Write ${speech.or(choices)} terminals.`,
  }),
  'bad-position': (at: At) => ({
    wrong: placed(at, 'A position has letters and digits, 12 at most.'),
    right: 'Name the positions like Off/Hand/Auto.',
  }),
  'json-shape.type': ({ expected, ...at }: At & { expected: string }) => ({
    wrong: placed(at, `Here stands something else than ${expected}.`),
    right: `Write ${expected} here.`,
  }),
  'json-shape.form': ({ form, ...at }: At & { form: FormName }) => ({
    wrong: placed(at, `This is not ${formCalled(form)}.`),
    right: `Write ${formCalled(form)}.`,
  }),
  'json-shape.choice': ({ values, ...at }: At & { values: readonly string[] }) => ({
    wrong: placed(at, `This has to be ${speech.or(values)}.`),
    right: `Write ${speech.or(values)}.`,
  }),
  'json-shape.fields': ({ fields, ...at }: At & { fields: readonly string[] }) => ({
    wrong: placed(at, `There is no field ${speech.and(fields.map(shown))} here.`),
    right: 'Leave it out.',
  }),
  'json-shape.none': ({ field, ...at }: At & { field: string }) => ({
    wrong: placed(at, `This ${nounOf(field)} is none of those there are.`),
    right: 'docs/notation.md lists them.',
  }),
  'json-shape': (at: At) => ({
    wrong: placed(at, 'This has another form than it has to have.'),
    right: 'docs/notation.md describes the JSON form.',
  }),
};
export type ValueProblemSaid = StatementOf<typeof valueProblems>;

interface Names {
  readonly name: string;
  readonly names: readonly string[];
}

const tooMany =
  (what: string) =>
  ({ count, most }: { count: number; most: number }) => ({
    wrong: `The circuit has ${count} ${what}; at most ${most} are read.`,
    right: 'Divide it into several circuits.',
  });

const LOOKS_LIKE = 'Write a circuit in the notation to JSON to see what it looks like.';

export const soundnessProblems = {
  ...valueProblems,
  'bad-json': ({ found }: { found: string }) => ({
    wrong: `This is no JSON: ${shown(found)} can't stand here.`,
    right: LOOKS_LIKE,
  }),
  'bad-json.end': { wrong: 'This is no JSON: it ends too early.', right: LOOKS_LIKE },
  'too-large.devices': tooMany('devices'),
  'too-large.paths': tooMany('current paths'),
  'too-large.stops': tooMany('stops on its paths'),
  'too-large.terminals': tooMany('terminals'),
  'control-character': ({ char }: { char: string }) => ({
    wrong: `This text has a character that can't be printed: ${shown(char)}.`,
    right: 'Take it out; a text is one line, and a blank serves as a tab.',
  }),
  'duplicate-designation': ({ name }: { name: string }) => ({
    wrong: `The designation ${name} is used twice.`,
    right: 'Give every device a designation of its own.',
  }),
  'duplicate-supply': ({ name }: { name: string }) => ({
    wrong: `There are two supplies ${name}.`,
    right: 'Give every supply a letter of its own.',
  }),
  'duplicate-sheet': ({ number }: { number: number }) => ({
    wrong: `Sheet ${number} is listed twice.`,
    right: 'List every sheet once.',
  }),
  'sheet-not-listed': ({ number }: { number: number }) => ({
    wrong: `A path is on sheet ${number}, and sheets doesn't list it.`,
    right: `Add { "number": ${number} } to sheets.`,
  }),

  'contact-terminals': (contact: {
    form: string;
    name: string;
    has: number;
    needs: number;
    usual: string;
  }) => ({
    wrong: `${capital(article(contact.form))} contact of ${contact.name} has ${contact.has} terminals.`,
    right: `It has ${contact.needs}, such as ${contact.usual}.`,
  }),
  'unknown-position': ({
    name,
    position,
    positions,
    ...slip
  }: Slip & { name: string; position: string; positions: readonly string[] }) => ({
    wrong: `${name} has no position ${shown(position)}.`,
    right: asMeant(slip, `Its positions are ${positions.join(', ')}.`),
  }),
  'unknown-position.noSelector': ({ name, position }: { name: string; position: string }) => ({
    wrong: `${name} has no position ${shown(position)}.`,
    right: 'Only a selector has contacts that depend on named positions.',
  }),
  'repeated-position': ({ name }: { name: string }) => ({
    wrong: `Two positions of ${name} have the same name.`,
    right: 'Name them apart.',
  }),
  'repeated-position.contact': ({ name }: { name: string }) => ({
    wrong: `A contact of ${name} names a position twice.`,
    right: 'Name every position once.',
  }),
  'reserved-position': ({ position }: { position: string }) => ({
    wrong: `A position can't be called ${position}: that is a form of contact.`,
    right: `Write it with a capital, ${capital(position)}, or choose another name.`,
  }),
  'repeated-terminal': ({ name, terminals }: { name: string; terminals: readonly string[] }) => ({
    wrong: `${name} has the terminal ${speech.and(terminals)} twice.`,
    right: 'Give every contact terminals of its own.',
  }),
  'too-many-points': ({ name, points, texts }: { name: string; points: number; texts: number }) => ({
    wrong: `${name} has ${points} points and ${texts} texts for them.`,
    right: `Write at most ${points} texts after the device's own.`,
  }),

  'supply-hop': ({ supply, enter, leave }: { supply: string; enter: string; leave: string }) => ({
    wrong: `A path can't lead through the supply ${supply}: it begins or ends there.`,
    right: `Write one terminal: ${supply}:${enter} or ${supply}:${leave}.`,
  }),
  'unknown-supply': ({ name, names, ...slip }: Slip & Names) => ({
    wrong: `There is no supply ${name}.`,
    right: asMeant(slip, `Declare it: supply ${name} 24 V DC. Declared: ${someOf(names) || 'none'}.`),
  }),
  'unknown-designation': ({ name, names, ...slip }: Slip & Names) => ({
    wrong: `There is no device ${name}.`,
    right: asMeant(
      slip,
      `Declare it on a line of its own: ${name} relay. Declared: ${someOf(names) || 'none'}.`,
    ),
  }),
  'unknown-terminal': ({
    name,
    terminal,
    terminals,
    ...slip
  }: Slip & { name: string; terminal: string; terminals: readonly string[] }) => ({
    wrong: `${name} has no terminal ${terminal}.`,
    right: asMeant(slip, `Its terminals are ${someOf(terminals, 30)}.`),
  }),
  'same-terminal-hop': ({ name, terminal }: { name: string; terminal: string }) => ({
    wrong: `A hop can't enter and leave ${name} at the same terminal ${terminal}.`,
    right: `Write ${name}:${terminal} to join that terminal, or the terminal on the other side after the hyphen.`,
  }),
  /** `others`: where it goes to from the terminal that it enters at. */
  'no-way-through': ({
    name,
    enter,
    leave,
    others,
  }: {
    name: string;
    enter: string;
    leave: string;
    others: readonly string[];
  }) => ({
    wrong: `There is nothing in ${name} between ${enter} and ${leave}.`,
    right:
      others.length > 0
        ? `From ${enter} it goes to ${speech.or(others.slice(0, 6))}: ${name}:${enter}-${others[0]}.`
        : `Join single terminals instead: ${name}:${enter}  ${name}:${leave}.`,
  }),
  'joins-itself': ({ at }: { at: string }) => ({
    wrong: `This joins ${at} to itself.`,
    right: 'Name each terminal once in a row; the conductor goes from there to the next stop.',
  }),
};
