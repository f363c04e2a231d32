/**
 * Forms of texts by name, as a schema names the one that a text hasn't got: a schema says no sentence, for it has no language. What each
 * is called is in the catalogues.
 */
export const FORM_NAMES = [
  'form.answers',
  'form.bankName',
  'form.designation',
  'form.id',
  'form.inputPoint',
  'form.issuedId',
  'form.language',
  'form.line',
  'form.noFormula',
  'form.password',
  'form.signIn',
  'form.skill',
  'form.slipCode',
  'form.supply',
  'form.terminal',
  'form.terminalRef',
  'form.topicsOrSkills',
] as const;
export type FormName = (typeof FORM_NAMES)[number];

export const formName = (name: FormName): FormName => name;

export const isFormName = (text: string): text is FormName =>
  (FORM_NAMES as readonly string[]).includes(text);
