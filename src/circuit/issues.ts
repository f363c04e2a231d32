/** What zod found wrong with a value, in the words of the notation. */
import type { core } from 'zod';
import type { CircuitCode } from './problem-codes.ts';
import { anyOf, shown } from './wording.ts';

type Issue = core.$ZodIssue;

interface WordedIssue {
  readonly code: CircuitCode;
  readonly message: string;
  readonly hint: string;
}

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

function nounOf(path: Issue['path']): string {
  const field = path.findLast((part) => typeof part === 'string') ?? '';
  return NOUNS[field] ?? (field || 'value');
}

/** One sentence of what is wrong and one of what would be right. */
export function wordIssue(issue: Issue): WordedIssue {
  const noun = nounOf(issue.path);
  const field = issue.path.findLast((part) => typeof part === 'string');
  switch (issue.code) {
    case 'too_big':
    case 'too_small': {
      const most = issue.code === 'too_big';
      const limit = Number(most ? issue.maximum : issue.minimum);
      if (issue.origin === 'string') {
        return {
          code: 'text-too-long',
          message: `This text is too long: ${limit} characters at most.`,
          hint: 'Shorten it.',
        };
      }
      const bound = most ? `at most ${limit}` : issue.inclusive ? `at least ${limit}` : `more than ${limit}`;
      return {
        code: 'out-of-range',
        message: `The ${noun} is ${bound}.`,
        hint: `Write ${noun === 'voltage' || noun.includes(' in ') ? 'a figure' : 'a number'} that is ${bound}.`,
      };
    }
    case 'invalid_type':
      if (issue.expected === 'int' || issue.expected === 'number') {
        return {
          code: 'out-of-range',
          message: `The ${noun} has to be ${issue.expected === 'int' ? 'a whole number' : 'a number'}.`,
          hint: issue.expected === 'int' ? 'Write it without a decimal point.' : 'Write it in digits.',
        };
      }
      return {
        code: 'json-shape',
        message: `Here stands something else than ${issue.expected}.`,
        hint: `Write ${issue.expected} here.`,
      };
    case 'invalid_format':
      if (field === 'positions') {
        return {
          code: 'bad-position',
          message: 'A position has letters and digits, 12 at most.',
          hint: 'Name the positions like Off/Hand/Auto.',
        };
      }
      return {
        code: 'json-shape',
        message: `This is not ${issue.message}.`,
        hint: `Write ${issue.message}.`,
      };
    case 'invalid_value': {
      const values = anyOf(issue.values.map(String));
      return { code: 'json-shape', message: `This has to be ${values}.`, hint: `Write ${values}.` };
    }
    case 'unrecognized_keys': {
      const keys = anyOf(issue.keys.slice(0, 5).map(shown), 'and');
      return { code: 'json-shape', message: `There is no field ${keys} here.`, hint: 'Leave it out.' };
    }
    case 'invalid_union': {
      const values = issue.errors
        .flat()
        .flatMap((each) => (each.code === 'invalid_value' ? each.values : []));
      if (field === 'terminals' && values.length > 0) {
        const choices = anyOf(values.map(String));
        return {
          code: 'out-of-range',
          message: `The ${noun} is ${choices}.`,
          hint: `Write ${choices} terminals.`,
        };
      }
      return {
        code: 'json-shape',
        message: `This ${noun} is none of those there are.`,
        hint: `docs/notation.md lists them.`,
      };
    }
    default:
      return {
        code: 'json-shape',
        message: issue.message,
        hint: 'docs/notation.md describes the JSON form.',
      };
  }
}
