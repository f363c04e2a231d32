/** What is wrong with the form of a value, with its place in it: `items.3.skill`, or nothing at the top. */
import type { FormName } from '../../../shared/form-name.ts';
import type { StatementOf } from '../statement.ts';
import { formCalled } from './form-names.ts';
import { BOUNDS, shown } from './problems/parts.ts';
import { speech } from './speech.ts';

interface At {
  readonly at: string;
}
const placed = ({ at }: At, wrong: string): string => `At ${at || 'the top'}: ${wrong}.`;

/** What JSON calls them, and a whole number. */
const TYPES: Readonly<Record<string, string>> = {
  string: 'a string',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'an array',
  object: 'an object',
  record: 'an object',
  null: 'null',
};

interface Bounded extends At {
  readonly bound: keyof typeof BOUNDS;
  readonly limit: number;
}

export const forms = {
  'form.missing': (at: At) => placed(at, 'nothing stands here, and something has to'),
  'form.type': ({ expected, ...at }: At & { expected: string }) =>
    placed(
      at,
      TYPES[expected] ? `this has to be ${TYPES[expected]}` : 'this is of another type than it has to be',
    ),
  'form.letters': ({ bound, limit, ...at }: Bounded) =>
    placed(at, `this text has to have ${BOUNDS[bound](limit)} characters`),
  'form.entries': ({ bound, limit, ...at }: Bounded) =>
    placed(at, `this list has to have ${BOUNDS[bound](limit)} entries`),
  'form.number': ({ bound, limit, ...at }: Bounded) => placed(at, `this has to be ${BOUNDS[bound](limit)}`),
  'form.multiple': ({ of, ...at }: At & { of: number }) => placed(at, `this has to be a multiple of ${of}`),
  'form.choice': ({ values, ...at }: At & { values: readonly string[] }) =>
    placed(at, `this has to be ${speech.or(values)}`),
  'form.none': (at: At) => placed(at, 'this is none of those there are'),
  'form.unknown': ({ fields, ...at }: At & { fields: readonly string[] }) =>
    placed(at, `there is no field ${speech.and(fields.map(shown))} here`),
  'form.named': ({ form, ...at }: At & { form: FormName }) => placed(at, formCalled(form)),
  'form.other': (at: At) => placed(at, 'this has another form than it has to have'),
};
export type FormSaid = StatementOf<typeof forms>;
