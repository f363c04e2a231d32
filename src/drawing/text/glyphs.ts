/** Each symbol in characters: a contact's blade leans as on the drawing, a changeover's touches its break leg. */
import type { Actuator } from '../parts/index.ts';
import type { SceneSymbol } from '../scene/types.ts';
import type { Canvas } from './canvas.ts';

const SIGN: Readonly<Record<Actuator, string>> = {
  push: 'E',
  mushroom: 'D',
  turn: 'F',
  field: '[',
  limit: '<',
  float: 'o',
  trip: '#',
};

type Way = 'open' | 'closed' | 'rest' | 'moved';

const upright = (canvas: Canvas, symbol: SceneSymbol): void => {
  for (const { x, y } of symbol.ports) canvas.put(x, y, '│');
};

function twoWay(canvas: Canvas, symbol: SceneSymbol, body: string, at: number): void {
  upright(canvas, symbol);
  canvas.put(symbol.x + at, symbol.top + 1, body);
}

function changeover(canvas: Canvas, symbol: SceneSymbol, way: Way): void {
  upright(canvas, symbol);
  const touching = way !== 'moved';
  // Turned over, the blade swings above its pivot: it leans the other way to reach the same leg.
  const body = symbol.flipped ? (touching ? '└╲ ╴┘' : '└╶ ╱┘') : touching ? '┌╱ ╴┐' : '┌╶ ╲┐';
  canvas.put(symbol.x - 2, symbol.top + 1, body);
}

function motor(canvas: Canvas, symbol: SceneSymbol): void {
  upright(canvas, symbol);
  const from = Math.min(symbol.x - 4, ...symbol.ports.map((port) => port.x));
  const to = Math.max(symbol.x + 4, ...symbol.ports.map((port) => port.x));
  const room = to - from - 1;
  const word = 'M 3~';
  const pad = Math.floor((room - word.length) / 2);
  const line = `[${' '.repeat(pad)}${word}${' '.repeat(room - word.length - pad)}]`;
  canvas.put(from, symbol.top + 1, line);
}

export function drawGlyph(canvas: Canvas, symbol: SceneSymbol, closed: readonly boolean[] | undefined): void {
  const { x, top, form } = symbol;
  const made = closed?.[0];
  switch (form) {
    case 'make':
    case 'main-make':
      twoWay(canvas, symbol, made ? '│' : '╲', made ? 0 : -1);
      break;
    case 'break':
    case 'main-break':
      twoWay(canvas, symbol, made === false ? '╴ ╱' : '└╱', 0);
      break;
    case 'isolator-pole':
      twoWay(canvas, symbol, made ? '│' : '╲╴', made ? 0 : -1);
      break;
    case 'breaker-pole':
      twoWay(canvas, symbol, made ? '×' : '╲×', made ? 0 : -1);
      break;
    case 'changeover':
      changeover(canvas, symbol, closed?.[1] ? 'moved' : 'rest');
      break;
    case 'fuse':
      twoWay(canvas, symbol, made === false ? '[ ]' : '[│]', -1);
      break;
    case 'heater':
      twoWay(canvas, symbol, '[S]', -1);
      break;
    case 'lamp':
      twoWay(canvas, symbol, '(╳)', -1);
      break;
    case 'sounder':
      twoWay(canvas, symbol, '[)]', -1);
      break;
    case 'output':
      twoWay(canvas, symbol, made ? '[ │ ]' : '[╲  ]', -2);
      break;
    case 'coil':
    case 'valve':
    case 'input':
    case 'common':
      twoWay(canvas, symbol, `[${inBox(symbol).padEnd(3)}]`, -2);
      break;
    case 'motor':
      motor(canvas, symbol);
      break;
    case 'terminal':
      canvas.put(x, top, '○');
      break;
  }
  if (symbol.actuator) {
    const reach = form === 'changeover' ? 2 : 1;
    canvas.put(x - reach - 2, top + 1, `${SIGN[symbol.actuator]}╌`);
  }
}

/** What stands in a load's box: coils with a delay T before or after the arrow, a latching relay's S and R. */
function inBox({ form, delay, latch }: SceneSymbol): string {
  if (form === 'input') return '0/1';
  if (form === 'valve') return '><';
  if (latch) return latch === 'set' ? 'S' : 'R';
  switch (delay) {
    case 'operate':
      return 'T›';
    case 'release':
      return '‹T';
    case 'pulse':
      return 'TT';
    default:
      return form === 'common' ? 'COM' : '';
  }
}
