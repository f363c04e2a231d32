/**
 * Forms of texts by name, as a schema names the one that a text hasn't got: a schema says no sentence, for it has no language. What each
 * is called is in the catalogues.
 */
export type FormName =
  | 'form.answers'
  | 'form.id'
  | 'form.issuedId'
  | 'form.line'
  | 'form.noFormula'
  | 'form.password'
  | 'form.signIn'
  | 'form.slipCode'
  | 'form.topicsOrSkills';

export const formName = (name: FormName): FormName => name;
