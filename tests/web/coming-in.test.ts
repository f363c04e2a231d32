/** What is typed by somebody who comes in, and files that are chosen as a roster. */
import fc from 'fast-check';
import { zipSync } from 'fflate';
import './support/words.ts';
import { describe, expect, it } from 'vitest';
import { CODE_LETTERS, signInName } from '../../shared/people.ts';
import {
  asCode,
  asSignIn,
  offeredSignIn,
  problemOfPassword,
  problemOfSignIn,
} from '../../src/web/forms/typed.ts';
import { rosterOf, textOf } from '../../src/web/screens/classes/roster/read-files.ts';

const file = (name: string, content: string | Uint8Array): File =>
  new File([content as BlobPart], name, { type: 'application/octet-stream' });
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('a name for signing in', () => {
  it.each([
    ['Ørjan Ekström', 'orjan.ekstrom'],
    ['  Ada  Quill ', 'ada.quill'],
    ['Łucja Weiß', 'lucja.weiss'],
    ['ada_q-2', 'ada_q-2'],
    ['-.ada', 'ada'],
    ['李', ''],
  ])('%j becomes %j', (typed, read) => {
    expect(asSignIn(typed)).toBe(read);
  });

  it.each([
    ['A. Barley', 'a.barley'],
    ['Jo St. John-Lee', 'jo.st.john-lee'],
    ['Ada Q.', 'ada.q'],
  ])('is offered to %j as %j', (name, offered) => {
    expect(offeredSignIn(name)).toBe(offered);
  });

  it('is one that the server takes, or the page says what is wrong; read again it stays', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), (typed) => {
        const read = asSignIn(typed);
        expect(signInName.safeParse(read).success).toBe(problemOfSignIn(typed) === undefined);
        expect(asSignIn(read)).toBe(read);
      }),
    );
  });
});

describe('a joining code', () => {
  it('is read in any case and grouping', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(...CODE_LETTERS), { minLength: 8, maxLength: 8 }),
        fc.constantFrom('', ' ', '-', ' - '),
        (letters, between) => {
          const code = letters.join('');
          const typed = `${code.slice(0, 4)}${between}${code.slice(4)}`.toLowerCase();
          expect(asCode(typed)).toBe(code);
        },
      ),
    );
  });

  it('of another length is none', () => {
    expect(asCode('4C7K-9MT')).toBeUndefined();
    expect(asCode('')).toBeUndefined();
  });
});

describe('a password', () => {
  it('is said to be too short with how far it is, and not refused for anything else', () => {
    expect(problemOfPassword('nine ferns')).toBeUndefined();
    expect(problemOfPassword('nine')).toContain('so far 4');
    expect(problemOfPassword('🌿🌿🌿🌿🌿')).toContain('so far 5');
    expect(problemOfPassword('🌿'.repeat(10))).toBeUndefined();
    expect(problemOfPassword('f'.repeat(201))).toContain('200');
  });
});

describe('files of a roster', () => {
  const csv = 'name,manner\nÅsa Berg,learner\n';

  it('one table is taken as it is, whichever way its letters were written', async () => {
    const wanted = { format: 'csv', text: csv };
    expect(await rosterOf([file('class.csv', utf8(csv))])).toEqual(wanted);
    expect(await rosterOf([file('class.csv', utf8(`\uFEFF${csv}`))])).toEqual(wanted);
    // Å in Windows-1252, as spreadsheets on older systems write it: one byte, C5 (the encoding's own table).
    const old = Uint8Array.from(csv, (letter) => (letter === 'Å' ? 0xc5 : letter.charCodeAt(0)));
    expect(textOf(old)).toBe(csv);
  });

  it('an export is known by its files, one by one or in a zip, in a folder too', async () => {
    const parts = {
      'users.csv': 'sourcedId\n',
      'enrollments.csv': 'sourcedId\n',
      'classes.csv': 'sourcedId\n',
    };
    const wanted = { format: 'oneroster', files: parts };
    const files = Object.entries(parts).map(([name, text]) => file(name, utf8(text)));
    expect(await rosterOf(files)).toEqual(wanted);
    const zip = zipSync({
      ...Object.fromEntries(Object.entries(parts).map(([name, text]) => [`export/${name}`, utf8(text)])),
      'export/picture.png': new Uint8Array([1, 2, 3]),
    });
    expect(await rosterOf([file('Export.ZIP', zip)])).toEqual(wanted);
  });

  it('what is none is refused in words', async () => {
    await expect(rosterOf([file('a.zip', new Uint8Array([1, 2, 3]))])).rejects.toThrow('can’t be opened');
    await expect(rosterOf([file('empty.zip', zipSync({ 'a.txt': utf8('a') }))])).rejects.toThrow('no table');
    await expect(rosterOf([file('a.csv', utf8(csv)), file('b.csv', utf8(csv))])).rejects.toThrow('one table');
    await expect(rosterOf([])).rejects.toThrow('no table');
  });
});
