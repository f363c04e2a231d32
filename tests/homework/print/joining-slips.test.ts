import { describe, expect, it } from 'vitest';
import { type JoiningSlip, joiningSlipsPdf } from '../../../src/homework/print/index.ts';
import { modulesOf } from '../../../src/homework/print/qr.ts';
import { english } from '../../../src/words/en/core.ts';
import { readPdf, together } from './read-pdf.ts';

const open: JoiningSlip = { name: null, link: null };
const link = 'https://practice.example/#/enter/3q2-7wAAAABBBBccccDDDDeeeeFFFFgggghhhhIII1';
const print = async (slips: readonly JoiningSlip[]) =>
  readPdf(
    await joiningSlipsPdf({
      words: english,
      className: 'Flour line, intake 2026',
      code: 'K7M2 QP9D',
      address: 'https://practice.example',
      slips,
      made: new Date(0),
    }),
  ).pages;

describe('joining slips', () => {
  it('come ten to a page, each with class, address, code and three steps', async () => {
    for (const [count, pages] of [
      [1, 1],
      [10, 1],
      [11, 2],
      [35, 4],
    ] as const) {
      const printed = await print(Array.from({ length: count }, () => open));
      expect(printed).toHaveLength(pages);
      const texts = printed.flat();
      for (const each of ['Flour line, intake 2026', 'K7M2 QP9D', '1.', '2.', '3.'])
        expect(texts.filter((text) => text === each)).toHaveLength(count);
      expect(
        printed
          .map(together)
          .join(' ')
          .match(/Open https:\/\/practice\.example in a browser/g),
      ).toHaveLength(count);
    }
  });

  it('with a link of their own have it in letters and as a square, and not the code of the class', async () => {
    const [page] = await print([{ name: 'Ada Northfield', link }, open]);
    expect(page).toContain('for Ada Northfield');
    expect(page!.join('')).toContain(link);
    expect(page!.filter((text) => text === 'K7M2 QP9D')).toHaveLength(1);
    expect(together(page!)).toContain('It works once, and only for you.');
  });

  it('cut a name that is too long, and hold any letters', async () => {
    const [page] = await print([{ name: `Łukasz ${'Long-'.repeat(15)}`, link: null }]);
    expect(page!.some((text) => /^for Lukasz Long-.*…$/.test(text))).toBe(true);
  });
});

describe('the square of a link', () => {
  const FINDER = ['1111111', '1000001', '1011101', '1011101', '1011101', '1000001', '1111111'];

  it('has the size, the finder patterns and the timing patterns of ISO/IEC 18004 (from memory)', () => {
    for (const text of ['A', link, 'x'.repeat(300)]) {
      const modules = modulesOf(text);
      const size = modules.length;
      expect((size - 17) % 4).toBe(0);
      const corner = (top: number, left: number): string[] =>
        Array.from({ length: 7 }, (_, row) =>
          Array.from({ length: 7 }, (__, column) => (modules[top + row]![left + column] ? '1' : '0')).join(
            '',
          ),
        );
      for (const [top, left] of [
        [0, 0],
        [0, size - 7],
        [size - 7, 0],
      ] as const)
        expect(corner(top, left)).toEqual(FINDER);
      for (let at = 8; at < size - 8; at++) {
        expect(modules[6]![at]).toBe(at % 2 === 0);
        expect(modules[at]![6]).toBe(at % 2 === 0);
      }
    }
  });

  it('differs where the texts do', () => {
    expect(modulesOf(`${link}2`)).not.toEqual(modulesOf(`${link}3`));
  });
});
