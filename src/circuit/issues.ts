/** What zod found wrong with a value, as a statement. */
import type { core } from 'zod';
import { isFormName } from '../../shared/form-name.ts';
import type { ValueProblemSaid } from '../words/index.ts';

type Issue = core.$ZodIssue;

/** `at`: where in the value it is, for values that have no lines. */
export function issueSaid(issue: Issue, at?: string): ValueProblemSaid {
  const field = issue.path.findLast((part) => typeof part === 'string') ?? '';
  switch (issue.code) {
    case 'too_big':
    case 'too_small': {
      const most = issue.code === 'too_big';
      const limit = Number(most ? issue.maximum : issue.minimum);
      if (issue.origin === 'string') return { says: 'text-too-long', most: limit, at };
      const bound = most ? 'most' : issue.inclusive ? 'least' : 'more';
      return { says: 'out-of-range', field, bound, limit, at };
    }
    case 'invalid_type':
      if (issue.expected === 'int') return { says: 'out-of-range.whole', field, at };
      if (issue.expected === 'number') return { says: 'out-of-range.number', field, at };
      return { says: 'json-shape.type', expected: issue.expected, at };
    case 'invalid_format':
      if (field === 'positions') return { says: 'bad-position', at };
      return isFormName(issue.message)
        ? { says: 'json-shape.form', form: issue.message, at }
        : { says: 'json-shape', at };
    case 'invalid_value':
      return { says: 'json-shape.choice', values: issue.values.map(String), at };
    case 'unrecognized_keys':
      return { says: 'json-shape.fields', fields: issue.keys.slice(0, 5), at };
    case 'invalid_union': {
      const values = issue.errors
        .flat()
        .flatMap((each) => (each.code === 'invalid_value' ? each.values : []));
      if (field === 'terminals' && values.length > 0) {
        return { says: 'out-of-range.terminals', field, choices: values.map(String), at };
      }
      return { says: 'json-shape.none', field, at };
    }
    default:
      return { says: 'json-shape', at };
  }
}
