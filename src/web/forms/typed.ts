/** What is typed when somebody comes in, read kindly and looked at before it is sent. */
import { beginsFormula, newName } from '../../../shared/new-names.ts';
import { joiningCode, password, signInName } from '../../../shared/people.ts';
import { words } from '../words.ts';

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

/** The name for signing in that somebody is offered: that of the initials in `A. Barley` has one dot. */
export const offeredSignIn = (name: string): string =>
  asSignIn(name)
    .replace(/([._-])[._-]+/g, '$1')
    .replace(/[._-]+$/, '');

export const problemOfName = (typed: string): string | undefined => {
  const w = words('enter').typed;
  if (typed.trim() === '') return w.noName;
  if (newName.safeParse(typed).success) return undefined;
  return beginsFormula(typed, true) ? w.formulaName : w.longName;
};

export const problemOfSignIn = (typed: string): string | undefined => {
  const w = words('enter').typed;
  const read = asSignIn(typed);
  if (read === '') return w.noSignIn;
  return signInName.safeParse(read).success ? undefined : w.shortSignIn;
};

export const problemOfPassword = (typed: string): string | undefined => {
  if (password.safeParse(typed).success) return undefined;
  const w = words('enter').typed;
  const letters = [...typed].length;
  return letters < 10 ? w.shortPassword(letters) : w.longPassword;
};

/** A joining code as it is kept; undefined where it can't be one. */
export const asCode = (typed: string): string | undefined => {
  const read = joiningCode.safeParse(typed);
  return read.success ? read.data : undefined;
};
