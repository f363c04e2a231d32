/** What is typed when somebody comes in, read kindly and looked at before it is sent. */
import { beginsFormula, newName } from '../../../../shared/new-names.ts';
import { joiningCode, password, signInName } from '../../../../shared/people.ts';

/** A name for signing in out of whatever was typed: small letters without accents, dots for spaces. */
export const asSignIn = (typed: string): string =>
  typed
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replaceAll('æ', 'ae')
    .replaceAll('ø', 'o')
    .replaceAll('ł', 'l')
    .trim()
    .replace(/\s+/g, '.')
    .replace(/[^a-z0-9._-]/g, '')
    .replace(/^[._-]+/, '')
    .slice(0, 40);

/** Of a name that a spreadsheet would run. */
export const FORMULA_NAME =
  'No word may begin with = + - or @: spreadsheets would run it. Begin with a letter or a digit.';

/** The name for signing in that somebody is offered: that of the initials in `A. Barley` has one dot. */
export const offeredSignIn = (name: string): string =>
  asSignIn(name)
    .replace(/([._-])[._-]+/g, '$1')
    .replace(/[._-]+$/, '');

export const problemOfName = (typed: string): string | undefined => {
  if (typed.trim() === '') return 'Type a name.';
  if (newName.safeParse(typed).success) return undefined;
  return beginsFormula(typed, true) ? FORMULA_NAME : 'One line of at most 80 letters.';
};

export const problemOfSignIn = (typed: string): string | undefined => {
  const read = asSignIn(typed);
  if (read === '') return 'Type a name: letters from a to z, digits, dots, _ and -.';
  return signInName.safeParse(read).success ? undefined : 'At least 2 letters or digits.';
};

export const problemOfPassword = (typed: string): string | undefined => {
  if (password.safeParse(typed).success) return undefined;
  const letters = [...typed].length;
  return letters < 10 ? `At least 10 letters; so far ${letters}.` : 'At most 200 letters.';
};

/** A joining code as it is kept; undefined where it can't be one. */
export const asCode = (typed: string): string | undefined => {
  const read = joiningCode.safeParse(typed);
  return read.success ? read.data : undefined;
};
