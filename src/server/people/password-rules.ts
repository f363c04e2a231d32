/**
 * Which passwords are refused: common ones, and those made of the name for signing in or of this program's own. Beyond that
 * only the length counts, which the contract says: no rule about capitals, digits or signs (NIST SP 800-63B, 3.1.1.2).
 */
import { createRequire } from 'node:module';
import { ApiFailure } from '../problems.ts';

type Common = typeof import('@zxcvbn-ts/language-common');

let common: ReadonlySet<string> | undefined;

/** The library's list of passwords that were found most often, read when it is wanted first. */
function commonOnes(): ReadonlySet<string> {
  if (!common) {
    const { dictionary } = createRequire(import.meta.url)('@zxcvbn-ts/language-common') as Common;
    common = new Set(dictionary['passwords-common'].map((one) => String(one)));
  }
  return common;
}

/** As it would be guessed: in whatever capitals, put together however the keyboard does. */
const plain = (text: string): string => text.normalize('NFKC').toLowerCase();

/** Texts that some passwords are only repetitions of: `passwordpassword`, `aaaaaaaaaa`. */
const repeated = (text: string): string => /^(.+?)\1+$/u.exec(text)?.[1] ?? text;

/** @throws ApiFailure where everybody would guess it */
export function checkPassword(password: string, signIn: string | null): void {
  const own = plain(password);
  const bare = own.replace(/[^\p{L}]/gu, '');
  const name = signIn === null ? '' : plain(signIn).replace(/[^\p{L}]/gu, '');
  const core = repeated(own);
  if ([...core].length < 5 && core !== own) throw new ApiFailure({ says: 'weak-password.repeated' });
  if (commonOnes().has(own) || commonOnes().has(core)) throw new ApiFailure({ says: 'weak-password.common' });
  if (
    (name.length > 2 && (repeated(bare) === name || bare === name)) ||
    (signIn !== null && own.replace(plain(signIn), '').length < 5 && own.includes(plain(signIn)))
  )
    throw new ApiFailure({ says: 'weak-password.signIn' });
  if (repeated(bare) === 'polewise') throw new ApiFailure({ says: 'weak-password.program' });
}
