/** What a schema finds wrong with a value, as a statement: the sentences of the library that looks are in English, and are left with it. */
import type { core } from 'zod';
import { isFormName } from '../../shared/form-name.ts';
import type { FormSaid } from './en/forms.ts';

type Issue = core.$ZodIssue;

export type { FormSaid };

/** What stands at a place in a value; undefined where there is no such place. */
export const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (at, part) =>
      typeof at === 'object' && at !== null ? (at as Record<PropertyKey, unknown>)[part] : undefined,
    value,
  );

function limitSaid(issue: core.$ZodIssueTooBig | core.$ZodIssueTooSmall, at: string): FormSaid {
  const limit = Number(issue.code === 'too_big' ? issue.maximum : issue.minimum);
  const bound = issue.code === 'too_big' ? 'most' : issue.inclusive === false ? 'more' : 'least';
  if (issue.origin === 'string') return { says: 'form.letters', at, bound, limit };
  if (issue.origin === 'array' || issue.origin === 'set') return { says: 'form.entries', at, bound, limit };
  return { says: 'form.number', at, bound, limit };
}

/** @param value - the whole value that was looked at: what is missing is told apart from what is wrong */
export function formSaid(issue: Issue, value: unknown): FormSaid {
  const at = issue.path.map(String).join('.');
  if (valueAt(value, issue.path) === undefined) return { says: 'form.missing', at };
  switch (issue.code) {
    case 'invalid_type':
      return { says: 'form.type', at, expected: issue.expected };
    case 'too_big':
    case 'too_small':
      return limitSaid(issue, at);
    case 'not_multiple_of':
      return { says: 'form.multiple', at, of: issue.divisor };
    case 'invalid_value':
      return { says: 'form.choice', at, values: issue.values.map(String) };
    case 'invalid_union':
      return { says: issue.discriminator === undefined ? 'form.other' : 'form.none', at };
    case 'unrecognized_keys':
      return { says: 'form.unknown', at, fields: issue.keys.slice(0, 5) };
    case 'invalid_format':
    case 'custom':
      return isFormName(issue.message)
        ? { says: 'form.named', at, form: issue.message }
        : { says: 'form.other', at };
    default:
      return { says: 'form.other', at };
  }
}
