/** CSV against RFC 4180 (Shafranovich 2005), section 2, rule by rule; its examples are quoted. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv, withoutGuards, writeCsv } from '../../src/homework/index.ts';

function cells(text: string): readonly (readonly string[])[] {
  const read = readCsv(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { columns, rows } = read.value;
  return [columns, ...rows.map((row) => columns.map(row.value))];
}

const codes = (text: string): readonly (readonly [string, number | undefined])[] => {
  const read = readCsv(text);
  return read.ok ? [] : read.problems.map(({ code, line }) => [code, line]);
};

describe('reading CSV by RFC 4180', () => {
  it('takes each record on a line of its own, with or without a break after the last (rules 1 and 2)', () => {
    const expected = [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ];
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual(expected);
    expect(cells('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(expected);
    expect(cells('aaa,bbb,ccc\nzzz,yyy,xxx\n')).toEqual(expected);
    expect(cells('\uFEFFaaa,bbb,ccc\rzzz,yyy,xxx')).toEqual(expected);
  });

  it('wants the same number of fields throughout (rule 4) and names every line that has others', () => {
    expect(codes('a,b\r\n1,2,3\r\n1,2\r\n1\r\n')).toEqual([
      ['csv-width', 2],
      ['csv-width', 4],
    ]);
  });

  it('takes quoted fields, with breaks and commas in them (rules 5 and 6)', () => {
    expect(cells('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
    expect(cells('"aaa","b\r\nbb","ccc"\r\nzzz,"y,y",xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'y,y', 'xxx'],
    ]);
  });

  it('takes a doubled quotation mark for one (rule 7)', () => {
    expect(cells('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });

  it('takes empty fields, at the end of a line and of the file too', () => {
    expect(cells('a,b,c\r\n,,\r\n1,,\r\n,2,')).toEqual([
      ['a', 'b', 'c'],
      ['', '', ''],
      ['1', '', ''],
      ['', '2', ''],
    ]);
  });

  it('refuses quotation marks where none can be, and one that is not closed, with the line', () => {
    expect(codes('a,b\r\nx"y,1\r\n')).toEqual([['csv-quote', 2]]);
    expect(codes('a,b\r\n"x"y,1\r\n')).toEqual([['csv-quote', 2]]);
    expect(codes('a,b\r\n1,2\r\n"x,1\r\n')).toEqual([['csv-quote', 3]]);
    expect(codes('')).toEqual([['csv-empty', 1]]);
  });

  it('counts lines through breaks inside values', () => {
    expect(codes('a,b\r\n"1\n2\n3",4\r\n5\r\n')).toEqual([['csv-width', 5]]);
  });

  it('answers any text with records or problems, never an exception', () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[a",\r\n ]{0,40}$/), (text) => {
        const read = readCsv(text);
        expect(read.ok || read.problems.length > 0).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});

describe('writing CSV', () => {
  const cell = fc.string({ unit: fc.constantFrom('a', 'é', '"', ',', '\r\n', '\n', ';', '=', '1') });

  it('is read again as it was, whatever is in the fields', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constant('x'), cell, cell), { minLength: 1, maxLength: 6 }),
        (rows) => {
          const table = [['h1', 'h2', 'h3'], ...rows];
          expect(cells(writeCsv(table))).toEqual(table.map((row) => row.map((text) => text.trim())));
        },
      ),
    );
  });

  it('ends every line in CR LF and quotes only what needs it', () => {
    expect(
      writeCsv([
        ['a', 'b c', 1.5],
        ['x,y', 'q"r', null],
      ]),
    ).toBe('a,b c,1.5\r\n"x,y","q""r",\r\n');
  });

  it('leaves no text that a spreadsheet would run as a formula, where people open the file', () => {
    const written = writeCsv([['=1+1', '+2', '-3', '@x', 'plain', -3]], { forSpreadsheets: true });
    expect(written).toBe("'=1+1,'+2,'-3,'@x,plain,-3\r\n");
    expect(writeCsv([['=1+1']])).toBe('=1+1\r\n');
    // OWASP, CSV Injection: signs in full width, and separators that begin another cell where a semicolon divides a line.
    const further = ['＝1+1', '\t=1', 'x;=1+1;', 'x; -1', 'Ann-Marie; B', "O'Hara"];
    expect(further.map((text) => writeCsv([[text]], { forSpreadsheets: true }).trimEnd())).toEqual([
      "'＝1+1",
      "'\t'=1",
      "x;'=1+1;",
      "x;' -1",
      'Ann-Marie; B',
      "O'Hara",
    ]);
  });

  it('comes back as it was from a file that people open', () => {
    const text = fc
      .array(fc.constantFrom('=', '-', '@', '＋', ';', '\t', ' ', "'", 'a', '1'))
      .map((all) => all.join(''));
    fc.assert(
      fc.property(
        // An apostrophe that stands before a formula by itself can't be told from one that was put there.
        text.filter((one) => !one.includes("'") && one.trim() === one),
        (one) => {
          const read = readCsv(writeCsv([['name'], [one], ['end']], { forSpreadsheets: true }));
          const back = read.ok && read.value.rows.length === 2 ? read.value.rows[0]!.value('name') : '';
          expect(withoutGuards(back)).toBe(one);
        },
      ),
    );
  });
});
