/** Which pieces of which lines lie on a traced path: the conductors between its stops, and no branch beside them. */
import type { TraceHop } from '../../../shared/solution.ts';
import type { Dot, Scene, SceneSymbol, Wire } from '../scene/types.ts';

export interface WayLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

/** By sheet of the scene: the pieces in the direction of the path; and by symbol, the terminals it passes. */
export interface Way {
  readonly lines: readonly (readonly WayLine[])[];
  readonly symbols: ReadonlyMap<string, ReadonlySet<string>>;
}

interface Knot {
  readonly sheet: number;
  readonly x: number;
  readonly y: number;
  readonly to: { readonly knot: string; readonly length: number }[];
}

const keyOf = (sheet: number, x: number, y: number): string =>
  `${sheet} ${Math.round(x * 20)} ${Math.round(y * 20)}`;

/** What it costs to go on at another mark of the same conductor: more than any line on a sheet. */
const JUMP = 10_000;

/** The lines of all conductors, on all sheets, as a graph. */
class Lines {
  private readonly knots = new Map<string, Knot>();

  constructor(scene: Scene) {
    const marks = new Map<number, string[]>();
    scene.sheets.forEach((sheet, index) => {
      const byNet = new Map<number, Wire[]>();
      for (const wire of sheet.wires) byNet.set(wire.net, [...(byNet.get(wire.net) ?? []), wire]);
      for (const [net, wires] of byNet)
        this.addLines(
          wires,
          sheet.dots.filter((dot) => dot.net === net),
          index,
        );
      for (const { net, x, y } of sheet.marks)
        marks.set(net, [...(marks.get(net) ?? []), keyOf(index, x, y)]);
      for (const { form, ports } of sheet.symbols) {
        const [above, below] = ports;
        // A through terminal is one piece of metal.
        if (form === 'terminal' && above && below)
          this.join(this.knot(index, above.x, above.y), this.knot(index, below.x, below.y), 1);
      }
    });
    for (const ends of marks.values())
      for (const one of ends) for (const other of ends) if (one < other) this.join(one, other, JUMP);
  }

  private knot(sheet: number, x: number, y: number): string {
    const key = keyOf(sheet, x, y);
    if (!this.knots.has(key)) this.knots.set(key, { sheet, x, y, to: [] });
    return key;
  }

  private join(one: string, other: string, length: number): void {
    this.knots.get(one)?.to.push({ knot: other, length });
    this.knots.get(other)?.to.push({ knot: one, length });
  }

  private addLines(wires: readonly Wire[], dots: readonly Dot[], index: number): void {
    for (const wire of wires) {
      const along = (x: number, y: number): number => Math.abs(x - wire.x1) + Math.abs(y - wire.y1);
      const flat = wire.y1 === wire.y2;
      const between = dots.filter(({ x, y }) =>
        flat
          ? y === wire.y1 && x > Math.min(wire.x1, wire.x2) && x < Math.max(wire.x1, wire.x2)
          : x === wire.x1 && y > Math.min(wire.y1, wire.y2) && y < Math.max(wire.y1, wire.y2),
      );
      const points = [
        { x: wire.x1, y: wire.y1 },
        ...between.sort((a, b) => along(a.x, a.y) - along(b.x, b.y)),
        { x: wire.x2, y: wire.y2 },
      ];
      points.slice(1).forEach((point, at) => {
        const before = points[at] as (typeof points)[number];
        this.join(
          this.knot(index, before.x, before.y),
          this.knot(index, point.x, point.y),
          Math.abs(point.x - before.x) + Math.abs(point.y - before.y),
        );
      });
    }
  }

  /** Shortest way from any of the first places to any of the second. */
  way(from: readonly string[], to: ReadonlySet<string>): { sheet: number; line: WayLine }[] {
    const length = new Map<string, number>();
    const came = new Map<string, string>();
    const open = new Set<string>();
    for (const start of from)
      if (this.knots.has(start)) {
        length.set(start, 0);
        open.add(start);
      }
    while (open.size > 0) {
      let next = '';
      for (const key of open)
        if (!next || (length.get(key) as number) < (length.get(next) as number)) next = key;
      open.delete(next);
      if (to.has(next)) return this.back(next, came);
      for (const { knot, length: step } of this.knots.get(next)?.to ?? []) {
        const total = (length.get(next) as number) + step;
        if (total >= (length.get(knot) ?? Number.POSITIVE_INFINITY)) continue;
        length.set(knot, total);
        came.set(knot, next);
        open.add(knot);
      }
    }
    return [];
  }

  private back(end: string, came: ReadonlyMap<string, string>): { sheet: number; line: WayLine }[] {
    const lines: { sheet: number; line: WayLine }[] = [];
    for (let at = end, before = came.get(at); before !== undefined; at = before, before = came.get(at)) {
      const [a, b] = [this.knots.get(before) as Knot, this.knots.get(at) as Knot];
      if (a.sheet === b.sheet && (a.x === b.x || a.y === b.y))
        lines.unshift({ sheet: a.sheet, line: { x1: a.x, y1: a.y, x2: b.x, y2: b.y } });
    }
    return lines;
  }
}

/**
 * Places at which a hop's terminal stands on a sheet: its ports, or where a supply's conductor begins. Of a common that
 * is drawn at each of a controller's points, the one at the point that the hop goes through.
 */
function placesOf(scene: Scene, { device, enter, leave }: TraceHop, which: 'enter' | 'leave'): string[] {
  const terminal = `${device}:${which === 'leave' ? (leave ?? enter) : enter}`;
  const passed = (symbol: SceneSymbol): boolean =>
    leave === undefined || passedBy(symbol, device, [enter, leave]).length > 0;
  return scene.sheets.flatMap((sheet, index) => [
    ...sheet.symbols.flatMap((symbol) =>
      passed(symbol)
        ? symbol.ports.filter((port) => port.terminal === terminal).map(({ x, y }) => keyOf(index, x, y))
        : [],
    ),
    ...sheet.marks
      .filter(({ kind, side, names }) => kind === 'supply' && side === 'left' && names.includes(terminal))
      .map(({ x, y }) => keyOf(index, x, y)),
  ]);
}

/** A motor's inner star point: a terminal that is not drawn. */
const INNER = '*';

/** The symbol's terminals that a hop passes, where it goes through this symbol. */
function passedBy({ device, ports }: SceneSymbol, through: string, names: readonly string[]): string[] {
  if (device !== through) return [];
  const drawn = names.filter((name) => name !== INNER).map((name) => `${device}:${name}`);
  return drawn.every((name) => ports.some(({ terminal }) => terminal === name)) ? drawn : [];
}

export function waysOf(scene: Scene, paths: readonly (readonly TraceHop[])[]): Way {
  const lines: WayLine[][] = scene.sheets.map(() => []);
  const symbols = new Map<string, Set<string>>();
  const graph = new Lines(scene);
  for (const path of paths) {
    for (const { device, enter, leave } of path)
      if (leave !== undefined)
        for (const sheet of scene.sheets)
          for (const symbol of sheet.symbols) {
            const passed = passedBy(symbol, device, [enter, leave]);
            if (passed.length > 0)
              symbols.set(symbol.id, new Set([...(symbols.get(symbol.id) ?? []), ...passed]));
          }
    path.slice(1).forEach((hop, index) => {
      const before = path[index] as TraceHop;
      const to = new Set(placesOf(scene, hop, 'enter'));
      for (const { sheet, line } of graph.way(placesOf(scene, before, 'leave'), to)) lines[sheet]?.push(line);
    });
  }
  return { lines, symbols };
}
