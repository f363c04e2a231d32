import type { Circuit } from '../../../shared/circuit.ts';
import { drawSvgs, layOut, PROFILES, type SceneSheet, type ShownState } from '../../drawing/index.ts';
import type { Drawn, Spot, View } from './messages.ts';

/** How far round a terminal's end a finger may be, in the drawing's pixels. */
const REACH = 11;

/** What a symbol is asked by, and what kind of thing it is. */
function kindOf({ form }: SceneSheet['symbols'][number]): Spot['kind'] {
  if (form === 'coil') return 'coil';
  if (form === 'input') return 'input';
  return form === 'lamp' || form === 'sounder' || form === 'valve' || form === 'motor' ? 'load' : 'contact';
}

function spotsOf({ symbols, width, height }: SceneSheet): Spot[] {
  const box = (
    item: string,
    kind: Spot['kind'],
    left: number,
    top: number,
    right: number,
    bottom: number,
  ): Spot => ({
    item,
    kind,
    x: left / width,
    y: top / height,
    width: (right - left) / width,
    height: (bottom - top) / height,
  });
  return symbols.flatMap((symbol) => {
    const { device, left, right, top, bottom, ports } = symbol;
    const kind = kindOf(symbol);
    const item = kind === 'input' ? (ports[0]?.terminal ?? device) : device;
    return [
      box(item, kind, left, top, right, bottom),
      ...ports.map(({ terminal, x, y }) =>
        box(terminal, 'terminal', x - REACH, y - REACH, x + REACH, y + REACH),
      ),
    ];
  });
}

/** A circuit laid out once, to be drawn in many states: the picture of each sheet. */
export function sheetsIn(circuit: Circuit, { width, theme }: View): (state: ShownState) => string[] {
  const scene = layOut(circuit, PROFILES[width]);
  return (state) => drawSvgs(scene, { theme, state });
}

/** Draws a circuit at rest, or in a state. */
export function draw(circuit: Circuit, { width, theme }: View, state?: ShownState): Drawn {
  const scene = layOut(circuit, PROFILES[width]);
  const svgs = drawSvgs(scene, { theme, ...(state ? { state } : {}) });
  return {
    sheets: scene.sheets.map((sheet, index) => ({
      title: sheet.title,
      svg: svgs[index]!,
      width: sheet.width,
      height: sheet.height,
      spots: spotsOf(sheet),
    })),
  };
}
