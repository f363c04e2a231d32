import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { generate } from '../../../src/generator/index.ts';
import { printing, WIDTH } from '../../../src/homework/print/document.ts';
import { type Block, gap, type Piece, paginate } from '../../../src/homework/print/flow.ts';
import { itemBlock } from '../../../src/homework/print/item-block.ts';
import { nameShown, shown, shownOf } from '../../../src/homework/print/letters.ts';
import { publicQuestion } from '../../../src/questions/index.ts';
import { english } from '../../../src/words/en/core.ts';

const { pen } = printing(english, 'Layout', new Date(0));
const piece = (height: number): Piece => ({ height, tag: 'P', draw: () => undefined });
const ROOM = 100;

describe('blocks on pages', () => {
  const blocks = fc.array(
    fc.array(fc.integer({ min: 1, max: 60 }).map(piece), { minLength: 1, maxLength: 4 }),
    {
      maxLength: 12,
    },
  );

  it('keep their order, lie within their page and never on one another', () => {
    fc.assert(
      fc.property(blocks, (list) => {
        const pages = paginate(list, () => ROOM);
        expect(pages.flat().map((placed) => placed.piece)).toEqual(list.flat());
        for (const page of pages) {
          let end = 0;
          for (const { piece: each, y } of page) {
            expect(y).toBeGreaterThanOrEqual(end);
            end = y + each.height;
          }
          expect(end).toBeLessThanOrEqual(ROOM);
        }
      }),
    );
  });

  it('are never divided where they fit a page', () => {
    fc.assert(
      fc.property(blocks, (list) => {
        const pages = paginate(list, () => ROOM);
        for (const block of list) {
          const on = pages.filter((page) => page.some((placed) => block.includes(placed.piece)));
          if (block.reduce((sum, { height }) => sum + height, 0) <= ROOM) expect(on).toHaveLength(1);
        }
      }),
    );
  });

  it('that are higher than a page begin one and go on', () => {
    const tall: Block = [piece(60), piece(60), piece(30)];
    const pages = paginate([[piece(10)], tall], () => ROOM);
    expect(pages.map((page) => page.map(({ piece: { height } }) => height))).toEqual([[10], [60], [60, 30]]);
  });

  it('leave gaps out at the top of a page', () => {
    const [, second] = paginate([[piece(90)], [gap(5), piece(80)]], () => ROOM);
    expect(second!.map(({ y }) => y)).toEqual([0]);
  });
});

describe('a gap', () => {
  it('turns no page for itself, and takes none', () => {
    expect(paginate([[piece(97), gap(5)]], () => ROOM)).toHaveLength(1);
    expect(paginate([[piece(50)], [piece(50), gap(5)]], () => ROOM)).toHaveLength(1);
  });
});

describe('an item of a printed paper', () => {
  /** As much as a page has under its title block. */
  const room = { most: 500, all: 690 };
  const far = 'beside the store, as the far line was called before';

  /** What takes the room, and how much of it is drawing. */
  const heights = (block: Block) => {
    const sum = (some: Block): number => some.reduce((all, { height }) => all + height, 0);
    return { all: sum(block.slice(0, -1)), drawn: sum(block.filter(({ tag }) => tag === 'Figure')) };
  };

  const items = [1, 3, 5, 7].flatMap((size) =>
    Array.from({ length: 6 }, (_, seed) => {
      const made = generate({ family: 'seal-in', size, seed: `long words ${seed}` });
      if (!made.ok) throw new Error(`${size} ${seed}`);
      const { circuit, scenario, lamps, family } = made.accepted.draft;
      const devices = circuit.devices.map((device) =>
        device.kind === 'lamp' ? { ...device, text: `${device.text} ${far}`.slice(0, 80) } : device,
      );
      const question = publicQuestion(english, {
        kind: 'lamp-states',
        family,
        circuit: { ...circuit, devices },
        scenario,
        asked: [...lamps],
      });
      const within = (page: number) =>
        itemBlock(pen, english, { number: 1, marks: 2, question }, WIDTH, { most: room.most, page });
      return { printed: within(room.all), asLargeAsCanBe: within(Number.POSITIVE_INFINITY) };
    }),
  );

  it('stands whole on one page, its drawing smaller where it has to be, but never so small that it reads badly', () => {
    let made = 0;
    for (const { printed, asLargeAsCanBe } of items) {
      const { all, drawn } = heights(asLargeAsCanBe);
      const fits = all - 0.3 * drawn <= room.all;
      const pages = fits ? 1 : 2;
      expect(paginate([printed], () => room.all)).toHaveLength(pages);
      if (fits && all > room.all) made++;
      // Where a smaller one saves no page, it is as large as it would be with all the room.
      const saves = paginate([asLargeAsCanBe], () => room.all).length > pages;
      if (!saves) expect(heights(printed)).toEqual({ all, drawn });
      else expect(heights(printed).drawn).toBeGreaterThanOrEqual(0.7 * drawn);
    }
    expect(made).toBeGreaterThan(0);
  });
});

describe('lettering', () => {
  const anything = fc.string({ unit: 'grapheme', maxLength: 120 });
  const text = fc.oneof(
    anything,
    fc.array(fc.string({ maxLength: 6 }), { maxLength: 60 }).map((words) => words.join(' ')),
  );

  it('shows any text in letters that are there, on one line, and the same when shown again', () => {
    fc.assert(
      fc.property(text, (any) => {
        const once = shown(any);
        expect(once).toMatch(/^[\x20-\x7e\xa1-\xff€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ]*$/);
        expect(shown(once)).toBe(once);
      }),
    );
  });

  it('keeps what it can and says when a letter is lost', () => {
    expect(shownOf('Zoë Müller-Øst, Œuvre €5')).toEqual({ text: 'Zoë Müller-Øst, Œuvre €5', whole: true });
    expect(shownOf('Łukasz Żak, Nguyễn')).toEqual({ text: 'Lukasz Zak, Nguyen', whole: true });
    expect(shownOf('e\u0301t\u00a0\u202eabc\u200b')).toEqual({ text: 'ét abc', whole: true });
    expect(shownOf('Иван 3')).toEqual({ text: '???? 3', whole: false });
    expect(nameShown('Иван')).toBe('');
    expect(nameShown('Иван B.')).toBe('???? B.');
  });

  it('is wrapped within its room, with every letter kept', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 20, max: 200 }), (any, room) => {
        const lines = pen.wrap(any, room, { size: 9 });
        for (const line of lines) expect(pen.width(line, { size: 9 })).toBeLessThanOrEqual(room + 0.5);
        expect(lines.join('').replaceAll(' ', '')).toBe(shown(any).replaceAll(' ', ''));
      }),
    );
  });

  it('is cut to its room', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 20, max: 200 }), (any, room) => {
        const cut = pen.cut(any, room, { size: 9, face: 'bold' });
        expect(pen.width(cut, { size: 9, face: 'bold' })).toBeLessThanOrEqual(room + 0.5);
        if (cut !== shown(any)) expect(cut.endsWith('…')).toBe(true);
      }),
    );
  });
});
