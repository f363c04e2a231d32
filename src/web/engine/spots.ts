import { isLoad, type SceneSheet } from '../../drawing/index.ts';
import type { Spot } from './messages.ts';

/** How far round a terminal's end a finger may be, in the drawing's pixels. */
const REACH = 11;
/** Terminals of one symbol that stand beside each other have their targets this far apart. */
const APART = 29;

interface Point {
  readonly terminal: string;
  readonly x: number;
  readonly y: number;
}

/** What a symbol is asked by, and what kind of thing it is. */
function kindOf({ form }: SceneSheet['symbols'][number]): Spot['kind'] {
  if (form === 'coil') return 'coil';
  if (form === 'input') return 'input';
  return isLoad(form) ? 'load' : 'contact';
}

/** By terminal: how far its target stands beside it, so that a finger tells the legs of a changeover apart. */
function asides(ports: readonly Point[]): ReadonlyMap<string, number> {
  const aside = new Map<string, number>();
  for (const [index, one] of ports.entries())
    for (const other of ports.slice(index + 1)) {
      const between = Math.abs(one.x - other.x);
      if (one.y !== other.y || between === 0 || between >= APART) continue;
      const shift = (APART - between) / 2;
      const [left, right] = one.x < other.x ? [one, other] : [other, one];
      aside.set(left.terminal, Math.min(aside.get(left.terminal) ?? 0, -shift));
      aside.set(right.terminal, Math.max(aside.get(right.terminal) ?? 0, shift));
    }
  return aside;
}

/** The places of a sheet that can be touched: symbols each before its terminals, then the poles of supplies. */
export function spotsOf({ symbols, marks, width, height }: SceneSheet): Spot[] {
  const terminalAt = ({ terminal, x, y }: Point, aside = 0): Spot => ({
    item: terminal,
    kind: 'terminal',
    x: (x - REACH) / width,
    y: (y - REACH) / height,
    width: (2 * REACH) / width,
    height: (2 * REACH) / height,
    ...(aside ? { aside } : {}),
  });
  const ofSymbols = symbols.flatMap((symbol): Spot[] => {
    const { device, place, left, right, top, bottom, ports } = symbol;
    const kind = kindOf(symbol);
    const aside = asides(ports);
    return [
      {
        item: kind === 'input' ? (ports[0]?.terminal ?? device) : device,
        kind,
        x: left / width,
        y: top / height,
        width: (right - left) / width,
        height: (bottom - top) / height,
      },
      ...ports.map((port) => ({ ...terminalAt(port, aside.get(port.terminal)), place })),
    ];
  });
  const ofSupplies = marks
    .filter(({ kind, side }) => kind === 'supply' && side === 'left')
    .flatMap(({ names, x, y }) => names.map((terminal) => terminalAt({ terminal, x, y })));
  return [...ofSymbols, ...ofSupplies];
}
