/** What forms of texts are called. */
import type { FormName } from '../../../shared/form-name.ts';

const FORMS = {
  'form.answers': 'a list of 1 to 200 answers',
  'form.bankName': 'a name such as make-and-break',
  'form.designation': 'a designation such as -K3',
  'form.id': 'letters, digits, - and _',
  'form.inputPoint': 'an input point such as -A1:I1',
  'form.issuedId': '21 letters and digits',
  'form.language': 'the tag of a language, such as en, de-AT or zh-Hant',
  'form.line': 'one line, without control characters',
  'form.noFormula': 'begins with a letter or digit: spreadsheets run what begins with = + - or @',
  'form.password': 'at least 10 letters',
  'form.signIn': '2 to 40 small letters, digits, dots, _ and -, beginning with a letter or digit',
  'form.skill': 'a skill name such as changeover-two-poles',
  'form.slipCode': 'eight letters and digits, as on the slip',
  'form.supply': 'a supply name such as A',
  'form.terminal': 'a terminal such as 13 or A1',
  'form.terminalRef': 'a terminal such as -K3:11',
  'form.topicsOrSkills': 'name topics or skills',
} satisfies Readonly<Record<FormName, string>>;

export const formCalled = (form: FormName): string => FORMS[form];
