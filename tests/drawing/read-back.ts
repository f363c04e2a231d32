/**
 * Reads a circuit back from a drawing as a person does: from where lines, dots, symbols and marks are, never from the
 * numbers the layout gave its conductors. And looks for what a draughtsman would not sign.
 */
import type { Circuit } from '../../shared/circuit.ts';
import { looksOf, poseOf } from '../../src/drawing/scene/pose.ts';
import type { Scene, SceneSheet, SceneSymbol, SceneText } from '../../src/drawing/scene/types.ts';
import { symbolFor } from '../../src/drawing/symbols/index.ts';

export class Groups {
  private readonly parent = new Map<string, string>();
  root(item: string): string {
    let at = item;
    for (let up = this.parent.get(at); up !== undefined && up !== at; up = this.parent.get(at)) at = up;
    return at;
  }
  add(item: string): void {
    if (!this.parent.has(item)) this.parent.set(item, item);
  }
  join(one: string, other: string): void {
    this.add(one);
    this.add(other);
    const [a, b] = [this.root(one), this.root(other)];
    if (a !== b) this.parent.set(b, a);
  }
  /** The groups of those members that `keep` lets through, each sorted, all sorted. */
  list(keep: (item: string) => boolean): string[] {
    const groups = new Map<string, string[]>();
    for (const item of this.parent.keys()) {
      if (!keep(item)) continue;
      const root = this.root(item);
      groups.set(root, [...(groups.get(root) ?? []), item]);
    }
    return [...groups.values()].map((group) => group.sort().join(' ')).sort();
  }
}

const isTerminal = (item: string): boolean => /^(-[A-Z]+[0-9]+|[A-Z]):/.test(item);

/** The conductors as the circuit says them. */
export function conductorsWritten(circuit: Circuit): string[] {
  const groups = new Groups();
  for (const { steps } of circuit.paths) {
    let before: string | undefined;
    for (const { device, enter, leave } of steps) {
      const into = `${device}:${enter}`;
      groups.add(into);
      if (leave) groups.add(`${device}:${leave}`);
      if (before) groups.join(before, into);
      before = leave ? `${device}:${leave}` : into;
    }
  }
  return groups.list(() => true);
}

/** Every terminal that the circuit's paths touch. */
export const terminalsWritten = (circuit: Circuit): Set<string> =>
  new Set(
    circuit.paths.flatMap(({ steps }) =>
      steps.flatMap(({ device, enter, leave }) => [
        `${device}:${enter}`,
        ...(leave ? [`${device}:${leave}`] : []),
      ]),
    ),
  );

const NEAR = 0.01;
const near = (a: number, b: number): boolean => Math.abs(a - b) < NEAR;

interface Piece {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly key: string;
}

const piecesOf = (sheet: SceneSheet, index: number): Piece[] =>
  sheet.wires.map((wire, w) => ({
    x1: Math.min(wire.x1, wire.x2),
    x2: Math.max(wire.x1, wire.x2),
    y1: Math.min(wire.y1, wire.y2),
    y2: Math.max(wire.y1, wire.y2),
    key: `wire ${index} ${w}`,
  }));

const on = (piece: Piece, x: number, y: number): boolean =>
  x > piece.x1 - NEAR && x < piece.x2 + NEAR && y > piece.y1 - NEAR && y < piece.y2 + NEAR;
const ends = (piece: Piece, x: number, y: number): boolean =>
  (near(piece.x1, x) && near(piece.y1, y)) || (near(piece.x2, x) && near(piece.y2, y));

/** The conductors as the drawing shows them. */
export function conductorsDrawn(scene: Scene, circuit: Circuit): string[] {
  const groups = new Groups();
  scene.sheets.forEach((sheet, index) => {
    const pieces = piecesOf(sheet, index);
    for (const piece of pieces) groups.add(piece.key);
    for (const { x, y } of sheet.dots) {
      const met = pieces.filter((piece) => on(piece, x, y));
      for (const piece of met) groups.join((met[0] as Piece).key, piece.key);
    }
    const corners = new Map<string, Piece>();
    for (const piece of pieces)
      for (const [x, y] of [
        [piece.x1, piece.y1],
        [piece.x2, piece.y2],
      ] as const) {
        const corner = `${Math.round(x * 50)} ${Math.round(y * 50)}`;
        const other = corners.get(corner);
        if (other) groups.join(other.key, piece.key);
        else corners.set(corner, piece);
      }
    for (const symbol of sheet.symbols)
      for (const { terminal, x, y } of symbol.ports)
        for (const piece of pieces) if (ends(piece, x, y)) groups.join(terminal, piece.key);
    for (const mark of sheet.marks)
      for (const piece of pieces)
        if (ends(piece, mark.x, mark.y))
          for (const name of mark.names)
            groups.join(mark.kind === 'supply' ? name : `mark ${name}`, piece.key);
  });
  const written = terminalsWritten(circuit);
  for (const terminal of written) groups.add(terminal);
  return groups.list((item) => isTerminal(item) && written.has(item));
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const boxOf = ({ x, y, width, height }: SceneText): Box => ({
  left: x,
  right: x + width,
  top: y,
  bottom: y + height,
});
/** A text's letters do not fill the height of its line. */
const lettersOf = (text: SceneText, cell: boolean): Box => {
  const box = boxOf(text);
  return cell ? box : { ...box, top: box.top + 2, bottom: box.bottom - 2 };
};
const bodyOf = ({ left, right, top, bottom }: SceneSymbol): Box => ({ left, right, top, bottom });

const meet = (a: Box, b: Box, slack: number): boolean =>
  a.left < b.right - slack &&
  b.left < a.right - slack &&
  a.top < b.bottom - slack &&
  b.top < a.bottom - slack;

const lineBox = ({ x1, y1, x2, y2 }: Piece): Box => ({ left: x1, right: x2, top: y1, bottom: y2 });

/** A line has no width: it meets a box when it passes through its inside. */
const passes = (line: Box, box: Box, slack: number): boolean =>
  line.left < box.right - slack &&
  line.right > box.left + slack &&
  line.top < box.bottom - slack &&
  line.bottom > box.top + slack;

/** Distance that a crossing keeps from a joint. */
const CLEAR = 6;

export function faultsOf(scene: Scene): string[] {
  const faults: string[] = [];
  const cell = scene.profile === 'text';
  const slack = cell ? 0.01 : 0.2;
  scene.sheets.forEach((sheet, index) => {
    const pieces = piecesOf(sheet, index);
    const say = (what: string): void => {
      faults.push(`sheet ${sheet.sheet}: ${what}`);
    };
    const isDot = (x: number, y: number): boolean =>
      sheet.dots.some((dot) => near(dot.x, x) && near(dot.y, y));
    jointFaults(sheet, pieces, isDot, say);
    crossingFaults(sheet, pieces, isDot, cell ? 0 : CLEAR, say);
    wayHomeFaults(sheet, pieces, say);
    if (!cell)
      for (const symbol of sheet.symbols)
        if (drawsOutside(symbol)) say(`${symbol.id} is drawn outside its box`);
    const inside = cell ? 0.4 : 0.5;
    for (const symbol of sheet.symbols) {
      const body = bodyOf(symbol);
      for (const piece of pieces)
        if (passes(lineBox(piece), body, inside)) say(`a conductor through ${symbol.id}`);
      for (const other of sheet.symbols)
        if (other !== symbol && symbol.id < other.id && meet(body, bodyOf(other), slack))
          say(`${symbol.id} on ${other.id}`);
    }
    const texts = sheet.texts.map((text) => ({ text, box: lettersOf(text, cell) }));
    texts.forEach(({ text, box }, t) => {
      for (let u = t + 1; u < texts.length; u++) {
        const other = texts[u] as (typeof texts)[number];
        if (meet(box, other.box, slack)) say(`"${text.text}" on "${other.text.text}"`);
      }
      for (const piece of pieces)
        if (passes(lineBox(piece), box, slack)) say(`a conductor through "${text.text}" of ${text.of}`);
      for (const symbol of sheet.symbols) {
        const own = symbol.ports.some(({ terminal }) => terminal === text.of) && text.role === 'number';
        if (!own && meet(box, bodyOf(symbol), slack)) say(`"${text.text}" on ${symbol.id}`);
      }
      for (const link of sheet.links)
        if (passes({ left: link.x1, right: link.x2, top: link.y, bottom: link.y }, box, slack))
          say(`a dashed line through "${text.text}"`);
      if (box.left < 0 || box.right > sheet.width + slack || box.bottom > sheet.height + slack)
        say(`"${text.text}" off the sheet`);
    });
  });
  return faults;
}

/** At each end of a line: a port, a corner, a mark, or a joint with its dot; and dots only where three ways meet. */
function jointFaults(
  sheet: SceneSheet,
  pieces: readonly Piece[],
  isDot: (x: number, y: number) => boolean,
  say: (what: string) => void,
): void {
  const ports = sheet.symbols.flatMap((symbol) => symbol.ports);
  for (const piece of pieces)
    for (const [x, y] of [
      [piece.x1, piece.y1],
      [piece.x2, piece.y2],
    ] as const) {
      const others = pieces.filter((other) => other !== piece && on(other, x, y));
      const through = others.filter((other) => !ends(other, x, y));
      if ((through.length > 0 || others.length > 1) && !isDot(x, y)) say(`a joint without dot at ${x} ${y}`);
      if (others.length > 0) continue;
      const atPort = ports.some((port) => near(port.x, x) && near(port.y, y));
      const atMark = sheet.marks.some((mark) => near(mark.x, x) && near(mark.y, y));
      if (!atPort && !atMark) say(`a loose end at ${x} ${y}`);
    }
  for (const { x, y } of sheet.dots) {
    const ways = new Set<string>();
    for (const piece of pieces.filter((other) => on(other, x, y))) {
      if (piece.x1 < x - NEAR) ways.add('left');
      if (piece.x2 > x + NEAR) ways.add('right');
      if (piece.y1 < y - NEAR) ways.add('up');
      if (piece.y2 > y + NEAR) ways.add('down');
    }
    if (ways.size < 3) say(`a dot where only ${ways.size} ways meet, at ${x} ${y}`);
  }
  for (const { terminal, x, y } of ports)
    if (
      pieces.filter((piece) => ends(piece, x, y)).length >
      ports.filter((port) => port.x === x && port.y === y).length
    )
      say(`two lines at ${terminal}`);
}

/** How far the strokes of symbols that look alike reach from their line, actuator and brake among them. */
const reaches = new Map<string, Box>();

function reachOf(symbol: SceneSymbol): Box {
  const spread = symbol.form === 'motor' ? symbol.ports.map((port) => port.x - symbol.x).join() : '';
  const key = `${symbol.look} ${symbol.flipped} ${symbol.ports[0]?.y === symbol.top} ${spread}`;
  const known = reaches.get(key);
  if (known) return known;
  const art = symbolFor(looksOf(symbol));
  const pose = poseOf(symbol, 0);
  const points = [...art.strokes(pose), ...(art.beside?.(pose) ?? [])].flatMap((stroke) => {
    if (stroke.kind === 'line') return stroke.points;
    if (stroke.kind === 'letter') return [stroke.at];
    const { at, r } = stroke;
    const [from, to] = stroke.kind === 'circle' ? [0, 360] : [stroke.from, stroke.to];
    return Array.from({ length: 13 }, (_, step) => {
      const angle = ((from + ((to - from) * step) / 12) * Math.PI) / 180;
      return [at[0] + r * Math.cos(angle), at[1] + r * Math.sin(angle)] as const;
    });
  });
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const box = {
    left: Math.min(...xs),
    right: Math.max(...xs),
    top: Math.min(...ys),
    bottom: Math.max(...ys),
  };
  reaches.set(key, box);
  return box;
}

const drawsOutside = (symbol: SceneSymbol): boolean => {
  const { left, right, top, bottom } = reachOf(symbol);
  return (
    symbol.x + left < symbol.left - NEAR ||
    symbol.x + right > symbol.right + NEAR ||
    symbol.top + top < symbol.top - NEAR ||
    symbol.top + bottom > symbol.bottom + NEAR
  );
};

/** A terminal that is drawn in several places (a controller's common at each of its points) is wired at all of them or at none. */
function wayHomeFaults(sheet: SceneSheet, pieces: readonly Piece[], say: (what: string) => void): void {
  const wired = new Map<string, boolean>();
  for (const { id, form, ports } of sheet.symbols)
    for (const { terminal, x, y } of ports) {
      // Both sides of a through terminal have one number; a conductor may come to one of them only.
      if (form === 'terminal') continue;
      const here = pieces.some((piece) => ends(piece, x, y));
      const before = wired.get(terminal);
      if (before !== undefined && before !== here) say(`no conductor at ${terminal} of ${id}`);
      wired.set(terminal, here || before === true);
    }
}

/** Lines cross at right angles, clear of joints and corners, and never run on each other. */
function crossingFaults(
  sheet: SceneSheet,
  pieces: readonly Piece[],
  isDot: (x: number, y: number) => boolean,
  clear: number,
  say: (what: string) => void,
): void {
  const flat = pieces.filter((piece) => near(piece.y1, piece.y2));
  const upright = pieces.filter((piece) => !near(piece.y1, piece.y2));
  for (const list of [flat, upright])
    list.forEach((one, index) => {
      for (let other = index + 1; other < list.length; other++) {
        const two = list[other] as Piece;
        const along = Math.min(one.x2, two.x2) - Math.max(one.x1, two.x1);
        const down = Math.min(one.y2, two.y2) - Math.max(one.y1, two.y1);
        const overlap = near(one.y1, one.y2)
          ? near(one.y1, two.y1) && along > NEAR
          : near(one.x1, two.x1) && down > NEAR;
        if (overlap) say(`two lines on each other at ${one.x1} ${one.y1}`);
      }
    });
  for (const a of flat)
    for (const b of upright) {
      const [x, y] = [b.x1, a.y1];
      if (!on(a, x, y) || !on(b, x, y) || ends(a, x, y) || ends(b, x, y) || isDot(x, y)) continue;
      if (sheet.dots.some((dot) => Math.hypot(dot.x - x, dot.y - y) < clear))
        say(`a crossing close to a joint at ${x} ${y}`);
    }
}
