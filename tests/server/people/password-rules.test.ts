/** The rules for passwords: what everybody would guess is refused, with the reason; nothing else is. */
import { describe, expect, it } from 'vitest';
import { checkPassword } from '../../../src/server/people/password-rules.ts';
import { outcome } from './asked.ts';

describe('a password', () => {
  it.each([
    ['aaaaaaaaaa', null, 'weak-password.repeated'],
    ['abcdabcdabcd', null, 'weak-password.repeated'],
    ['fernfernfern', null, 'weak-password.repeated'],
    ['potfernpotfern', null, 'let in'],
    ['1234567890', null, 'weak-password.common'],
    ['QwertyUiop', null, 'weak-password.common'],
    ['PASSWORDpassword', null, 'weak-password.common'],
    ['nora.newnora.new', 'nora.new', 'weak-password.signIn'],
    ['Nora-New-2026', 'nora.new', 'weak-password.signIn'],
    ['nora.new2026', 'nora.new', 'weak-password.signIn'],
    ['2026nora.new', 'nora.new', 'weak-password.signIn'],
    ['2026-nora-new-nora-new', 'nora.new', 'weak-password.signIn'],
    ['nora.new and the ferns', 'nora.new', 'let in'],
    ['nora.new2026!', 'nora.new', 'weak-password.signIn'],
    ['nora.newfern', 'nora.new', 'weak-password.signIn'],
    ['nora.newferns', 'nora.new', 'let in'],
    ['nora.new2026', null, 'let in'],
    // Two letters are in every password somewhere.
    ['no 73 19 46 28', 'no', 'let in'],
    ['nol 73 19 46 28', 'nol', 'weak-password.signIn'],
    ['1794628', '1794', 'weak-password.signIn'],
    ['Polewise 2026', null, 'weak-password.program'],
    ['polewise-POLEWISE', 'nora.new', 'weak-password.program'],
    ['polewise on the sill', null, 'let in'],
    ['the ferns are on the sill', 'nora.new', 'let in'],
  ])('%j of %j: %s', async (password, signIn, expected) => {
    expect(await outcome(() => checkPassword(password, signIn))).toBe(expected);
  });
});
