/** Rows stacked on sheets: one as high as it needs to be, or pages of one size with frame and title block. */
import type { FrameLine, SceneSheet, SceneText } from '../scene/types.ts';
import type { DrawnSection } from './draw-section.ts';
import type { Page, Profile } from './profile.ts';

export interface SheetTitles {
  readonly title: string;
  readonly sheet: number;
  readonly sheetTitle: string;
}

/** `1`; where a sheet of the circuit takes several of paper, `1a`, `1b` after it. */
export const sheetName = (sheet: number, piece: number): string =>
  piece === 1 ? String(sheet) : `${sheet}${String.fromCharCode(95 + piece)}`;

export function sheetsOf(rows: readonly DrawnSection[], profile: Profile, titles: SheetTitles): SceneSheet[] {
  const { page } = profile;
  const common = { sheet: titles.sheet, title: titles.sheetTitle };
  if (!page) {
    const { margin } = profile;
    const content = stacked(rows, profile.stack, margin, margin);
    const width = Math.max(profile.sheetWidth, ...rows.map((row) => row.width + 2 * margin));
    return [
      { ...common, piece: 1, pieces: 1, ...content, width, height: content.bottom + margin, frame: [] },
    ];
  }
  const room = page.height - 2 * page.edge - page.block - 2 * page.inner;
  const pages: DrawnSection[][] = [];
  let used = Number.POSITIVE_INFINITY;
  for (const row of rows) {
    if (used + profile.stack + row.height > room) {
      pages.push([]);
      used = -profile.stack;
    }
    pages[pages.length - 1]?.push(row);
    used += profile.stack + row.height;
  }
  return pages.map((list, index) => {
    const content = stacked(list, profile.stack, page.left + page.inner, page.edge + page.inner);
    const framed = frameOf(page, profile, titles, index + 1, pages.length);
    // A single row higher than the page makes its page higher: nothing is left off.
    const height = Math.max(page.height, content.bottom + page.inner + page.block + page.edge);
    const drop = height - page.height;
    return {
      ...common,
      piece: index + 1,
      pieces: pages.length,
      ...content,
      texts: [...content.texts, ...framed.texts.map((text) => ({ ...text, y: text.y + drop }))],
      width: page.width,
      height,
      frame: framed.lines.map((line) => lowered(line, page, drop)),
    };
  });
}

function lowered(line: FrameLine, page: Page, drop: number): FrameLine {
  const move = (y: number): number => (y > page.edge ? y + drop : y);
  return { ...line, y1: move(line.y1), y2: move(line.y2) };
}

type Content = Pick<SceneSheet, 'symbols' | 'wires' | 'dots' | 'marks' | 'links' | 'texts'> & {
  readonly bottom: number;
};

function stacked(rows: readonly DrawnSection[], gap: number, dx: number, top: number): Content {
  let dy = top;
  const moved = rows.map((row) => {
    const at = dy;
    dy += row.height + gap;
    return shifted(row, dx, at);
  });
  return {
    symbols: moved.flatMap((row) => row.symbols),
    wires: moved.flatMap((row) => row.wires),
    dots: moved.flatMap((row) => row.dots),
    marks: moved.flatMap((row) => row.marks),
    links: moved.flatMap((row) => row.links),
    texts: moved.flatMap((row) => row.texts),
    bottom: dy - gap,
  };
}

function shifted(row: DrawnSection, dx: number, dy: number): DrawnSection {
  return {
    ...row,
    symbols: row.symbols.map((symbol) => ({
      ...symbol,
      x: symbol.x + dx,
      left: symbol.left + dx,
      right: symbol.right + dx,
      top: symbol.top + dy,
      bottom: symbol.bottom + dy,
      ports: symbol.ports.map((port) => ({ ...port, x: port.x + dx, y: port.y + dy })),
    })),
    wires: row.wires.map((wire) => ({
      net: wire.net,
      x1: wire.x1 + dx,
      y1: wire.y1 + dy,
      x2: wire.x2 + dx,
      y2: wire.y2 + dy,
    })),
    dots: row.dots.map((dot) => ({ net: dot.net, x: dot.x + dx, y: dot.y + dy })),
    marks: row.marks.map((mark) => ({ ...mark, x: mark.x + dx, y: mark.y + dy })),
    links: row.links.map((link) => ({ ...link, x1: link.x1 + dx, x2: link.x2 + dx, y: link.y + dy })),
    texts: row.texts.map((text) => ({ ...text, x: text.x + dx, y: text.y + dy })),
  };
}

const REST = 'Drawn at rest: de-energised and unactuated';

/** The frame, and below the drawing the title block: what it is of, which sheet, and in which state it is drawn. */
function frameOf(
  page: Page,
  profile: Profile,
  { title, sheet, sheetTitle }: SheetTitles,
  piece: number,
  pieces: number,
): { readonly lines: FrameLine[]; readonly texts: SceneText[] } {
  const [left, right] = [page.left, page.width - page.edge];
  const [top, bottom] = [page.edge, page.height - page.edge];
  const block = bottom - page.block;
  const corner = right - 260;
  const middle = corner - 330;
  const heavy = (x1: number, y1: number, x2: number, y2: number): FrameLine => ({
    x1,
    y1,
    x2,
    y2,
    heavy: true,
  });
  const light = (x1: number, y1: number, x2: number, y2: number): FrameLine => ({
    x1,
    y1,
    x2,
    y2,
    heavy: false,
  });
  const pad = 8;
  const write = (id: string, text: string, x: number, y: number, width: number): SceneText => ({
    id: `block/${id}`,
    role: 'title',
    text: cut(text, width - 2 * pad, profile),
    x: x + pad,
    y,
    width: Math.min(width - 2 * pad, profile.measure(text, 'title')),
    height: profile.lineHeight('title'),
    anchor: 'start',
    of: 'block',
  });
  const name = sheetName(sheet, piece);
  const count = pieces > 1 ? ` (${piece} of ${pieces})` : '';
  const y = block + (page.block - profile.lineHeight('title')) / 2;
  return {
    lines: [
      heavy(left, top, right, top),
      heavy(left, bottom, right, bottom),
      heavy(left, top, left, bottom),
      heavy(right, top, right, bottom),
      heavy(left, block, right, block),
      light(middle, block, middle, bottom),
      light(corner, block, corner, bottom),
    ],
    texts: [
      write('title', title, left, y, middle - left),
      write('rest', REST, middle, y, corner - middle),
      write(
        'sheet',
        `Sheet ${name}${sheetTitle ? `: ${sheetTitle}` : ''}${count}`,
        corner,
        y,
        right - corner,
      ),
    ],
  };
}

function cut(text: string, width: number, profile: Profile): string {
  let shown = text;
  while (shown.length > 1 && profile.measure(shown, 'title') > width) shown = `${shown.slice(0, -2)}…`;
  return shown;
}
