/**
 * Reads off a drawing, from where its texts and symbols stand, which contacts belong to one device, where their coil is and in which
 * positions they are closed; as a person does, who follows `/2.4` to sheet 2, path 4.
 */
import type { Scene, SceneSheet, SceneSymbol, SceneText } from '../../src/drawing/scene/types.ts';

/** A symbol with what is written at it, line by line: left of it, and below the return pole under it. */
export interface Written {
  readonly symbol: SceneSymbol;
  /** Where a person who counts columns finds it: `/4`, `/2.4`, `/2a.4`. */
  readonly place: string;
  readonly beside: readonly string[];
  readonly below: readonly string[];
  /** Over the dashed line from the contact left of it. */
  readonly over: readonly string[];
  /** A dashed line comes to it from the left. */
  readonly linked: boolean;
  /** The symbols that the dashed line joins, itself among them. */
  readonly stand: readonly string[];
}

const NEAR = 0.6;
const near = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

/** Lines that stand right under one another, flush with one edge. */
function blocksOf(texts: readonly SceneText[], edge: (text: SceneText) => number): SceneText[][] {
  const blocks: SceneText[][] = [];
  for (const text of [...texts].sort((a, b) => Math.round(edge(a)) - Math.round(edge(b)) || a.y - b.y)) {
    const last = blocks.at(-1)?.at(-1);
    if (last && near(edge(last), edge(text)) && near(last.y + last.height, text.y)) blocks.at(-1)?.push(text);
    else blocks.push([text]);
  }
  return blocks;
}

const rightOf = ({ x, width }: SceneText): number => x + width;
const topOf = (block: readonly SceneText[]): number => block[0]?.y ?? 0;
const bottomOf = (block: readonly SceneText[]): number => {
  const last = block.at(-1);
  return last ? last.y + last.height : 0;
};

/** The number over the column that something at `x` stands in, in the row whose numbers were last passed going down. */
function columnOf({ texts }: SceneSheet, x: number, y: number): string {
  const above = texts.filter((text) => text.role === 'path' && text.y < y);
  const row = above.filter((text) => text.y === Math.max(...above.map((each) => each.y)));
  const middle = (text: SceneText): number => text.x + text.width / 2;
  const nearest = [...row].sort((a, b) => Math.abs(middle(a) - x) - Math.abs(middle(b) - x))[0];
  return nearest?.text ?? '';
}

/** The symbol nearest to the right of a block at whose height the block's middle is. */
function besideOf(sheet: SceneSheet, block: readonly SceneText[]): SceneSymbol | undefined {
  const [edge, middle] = [rightOf(block[0] as SceneText), (topOf(block) + bottomOf(block)) / 2];
  return sheet.symbols
    .filter(({ top, bottom, x }) => x > edge && near((top + bottom) / 2, middle))
    .sort((a, b) => a.x - b.x)[0];
}

function sheetWritten(sheet: SceneSheet, several: boolean): Written[] {
  const letter = sheet.piece > 1 ? String.fromCharCode(95 + sheet.piece) : '';
  const placed = (symbol: SceneSymbol): string => {
    const first = symbol.ports.reduce((least, port) => Math.min(least, port.x), symbol.x);
    const column = columnOf(sheet, symbol.form === 'motor' ? first : symbol.x, symbol.top);
    return several ? `/${sheet.sheet}${letter}.${column}` : `/${column}`;
  };
  const labels = sheet.texts.filter(
    ({ role, anchor }) => anchor === 'end' && /name|text|place|list/.test(role),
  );
  const beside = new Map<SceneSymbol, readonly string[]>();
  const over = new Map<SceneSymbol, readonly string[]>();
  for (const block of blocksOf(labels, rightOf)) {
    const lines = block.map(({ text }) => text);
    const named = block[0]?.role === 'name';
    const symbol = named ? besideOf(sheet, block) : undefined;
    if (symbol) beside.set(symbol, lines);
    else {
      const line = sheet.links
        .filter(
          ({ x1, x2, y }) =>
            x1 < rightOf(block[0] as SceneText) &&
            rightOf(block[0] as SceneText) < x2 &&
            near(bottomOf(block), y),
        )
        .at(0);
      const at = sheet.symbols.find(({ id }) => id === line?.to);
      if (at) over.set(at, lines);
    }
  }
  const below = new Map<SceneSymbol, readonly string[]>();
  const bands = sheet.texts.filter(({ role, anchor }) => anchor === 'start' && /text|list/.test(role));
  for (const block of blocksOf(bands, ({ x }) => x)) {
    const [{ x, width }, top] = [block[0] as SceneText, topOf(block)];
    const right = Math.max(x + width, ...block.map(rightOf));
    const symbol = sheet.symbols
      .filter((each) => each.bottom <= top && each.x > x - 16 && each.x < right + 16)
      .sort(
        (a, b) => b.bottom - a.bottom || Math.abs(a.x - (x + right) / 2) - Math.abs(b.x - (x + right) / 2),
      )
      .find(({ form }) => form === 'coil' || form === 'lamp');
    if (symbol) below.set(symbol, [...(below.get(symbol) ?? []), ...block.map(({ text }) => text)]);
  }
  return sheet.symbols.map((symbol) => {
    const stand = new Set([symbol.id]);
    for (let size = 0; size < stand.size; ) {
      size = stand.size;
      for (const { from, to } of sheet.links) if (stand.has(from) || stand.has(to)) stand.add(from).add(to);
    }
    return {
      symbol,
      place: placed(symbol),
      beside: beside.get(symbol) ?? [],
      below: below.get(symbol) ?? [],
      over: over.get(symbol) ?? [],
      linked: sheet.links.some(({ to }) => to === symbol.id),
      stand: [...stand],
    };
  });
}

export function writtenOn(scene: Scene): Written[] {
  const several =
    new Set(scene.sheets.map(({ sheet }) => sheet)).size > 1 || scene.sheets.some(({ pieces }) => pieces > 1);
  return scene.sheets.flatMap((sheet) => sheetWritten(sheet, several));
}
