/** What forms of texts are called. */
import type { FormName } from '../../../shared/form-name.ts';

const FORMS = {
  'form.answers': 'a list of 1 to 200 answers',
  'form.id': 'letters, digits, - and _',
  'form.issuedId': '21 letters and digits',
  'form.line': 'one line, without control characters',
  'form.noFormula': 'begins with a letter or digit: spreadsheets run what begins with = + - or @',
  'form.password': 'at least 10 letters',
  'form.signIn': '2 to 40 small letters, digits, dots, _ and -, beginning with a letter or digit',
  'form.slipCode': 'eight letters and digits, as on the slip',
  'form.topicsOrSkills': 'name topics or skills',
} satisfies Readonly<Record<FormName, string>>;

/** What a value isn't, by what a schema says of it; what only programs send wrongly it says by itself. */
export const formCalled = (said: string): string => (FORMS as Readonly<Record<string, string>>)[said] ?? said;
