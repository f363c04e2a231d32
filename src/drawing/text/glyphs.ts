/** Each symbol in characters: a contact's blade leans as on the drawing, a changeover's touches its break leg. */

import type { LampState } from '../../../shared/solution.ts';
import type { Actuator } from '../parts/index.ts';
import { poseOf } from '../scene/pose.ts';
import type { SceneSymbol } from '../scene/types.ts';
import { positionOf, type ShownState } from '../states/shown-state.ts';
import { type Canvas, heavy } from './canvas.ts';

const SIGN: Readonly<Record<Actuator, string>> = {
  push: 'E',
  mushroom: 'D',
  turn: 'F',
  field: '[',
  limit: '<',
  float: 'o',
  trip: '#',
};

type Way = 'rest' | 'travelling' | 'moved';

/** Turned over, the blade swings above its pivot: it leans the other way to reach the same leg. */
const CHANGEOVER: Readonly<Record<Way, readonly [plain: string, flipped: string]>> = {
  rest: ['┌╱ ╴┐', '└╲ ╴┘'],
  travelling: ['┌╶│╴┐', '└╶│╴┘'],
  moved: ['┌╶ ╲┐', '└╶ ╱┘'],
};

/** What fills a lamp, and whatever else is on, dim or flashing. */
const FILLED: Readonly<Record<Exclude<LampState, 'dark'>, string>> = { lit: '█', dim: '▄', flashing: '▞' };

/** The symbol's own part of a state; at rest there is none. */
interface Seen {
  readonly closed: readonly boolean[] | undefined;
  readonly live: readonly boolean[];
  /** What fills it; a space where it is off. */
  readonly filled: string;
  readonly input: string;
}

function seenIn(symbol: SceneSymbol, state: ShownState | undefined): Seen {
  if (!state) return { closed: undefined, live: [], filled: ' ', input: '0/1' };
  const position = symbol.mechanism === undefined ? 0 : positionOf(state, symbol.mechanism);
  const coil = state.coils.get(symbol.latch === 'reset' ? `${symbol.device}:B1` : symbol.device);
  const load = state.loads.get(symbol.device) ?? (coil ? 'lit' : 'dark');
  const input = state.inputs.get(symbol.ports[0]?.terminal ?? '');
  return {
    closed: poseOf(symbol, position).closed,
    live: symbol.ports.map(({ terminal }) => state.energised.has(terminal)),
    filled: load === 'dark' ? ' ' : FILLED[load],
    input: input === '0' || input === '1' ? ` ${input} ` : input === undefined ? '0/1' : ' ? ',
  };
}

const upright = (canvas: Canvas, { ports }: SceneSymbol, { live }: Seen): void => {
  ports.forEach(({ x, y }, at) => {
    canvas.put(x, y, live[at] ? heavy('│') : '│');
  });
};

function twoWay(canvas: Canvas, symbol: SceneSymbol, seen: Seen, body: string, at: number): void {
  upright(canvas, symbol, seen);
  canvas.put(symbol.x + at, symbol.top + 1, body);
}

function changeover(canvas: Canvas, symbol: SceneSymbol, seen: Seen): void {
  upright(canvas, symbol, seen);
  const [rest = true, moved = false] = seen.closed ?? [];
  const body = CHANGEOVER[moved ? 'moved' : rest ? 'rest' : 'travelling'][symbol.flipped ? 1 : 0];
  const [, breakLeg, makeLeg] = seen.live;
  const corner = (at: number, live: boolean | undefined): string =>
    live ? heavy(body.charAt(at)) : body.charAt(at);
  canvas.put(symbol.x - 2, symbol.top + 1, `${corner(0, breakLeg)}${body.slice(1, 4)}${corner(4, makeLeg)}`);
}

function motor(canvas: Canvas, symbol: SceneSymbol, seen: Seen): void {
  upright(canvas, symbol, seen);
  const from = Math.min(symbol.x - 4, ...symbol.ports.map((port) => port.x));
  const to = Math.max(symbol.x + 4, ...symbol.ports.map((port) => port.x));
  const room = to - from - 1;
  const word = `${seen.filled}M 3~${seen.filled}`.trim();
  const pad = Math.floor((room - word.length) / 2);
  const line = `[${' '.repeat(pad)}${word}${' '.repeat(room - word.length - pad)}]`;
  canvas.put(from, symbol.top + 1, line);
}

/** Draws a symbol as it is drawn at rest, or as it stands in a state. */
export function drawGlyph(canvas: Canvas, symbol: SceneSymbol, state: ShownState | undefined): void {
  const { x, top, form } = symbol;
  const seen = seenIn(symbol, state);
  const made = seen.closed?.[0];
  const bar = seen.live.some(Boolean) ? heavy('│') : '│';
  switch (form) {
    case 'make':
    case 'main-make':
      twoWay(canvas, symbol, seen, made ? bar : '╲', made ? 0 : -1);
      break;
    case 'break':
    case 'main-break':
      twoWay(canvas, symbol, seen, made === false ? '╴ ╱' : '└╱', 0);
      break;
    case 'isolator-pole':
      twoWay(canvas, symbol, seen, made ? bar : '╲╴', made ? 0 : -1);
      break;
    case 'breaker-pole':
      twoWay(canvas, symbol, seen, made ? '×' : '╲×', made ? 0 : -1);
      break;
    case 'changeover':
      changeover(canvas, symbol, seen);
      break;
    case 'fuse':
      twoWay(canvas, symbol, seen, made === false ? '[ ]' : `[${bar}]`, -1);
      break;
    case 'heater':
      twoWay(canvas, symbol, seen, '[S]', -1);
      break;
    case 'lamp':
      twoWay(canvas, symbol, seen, `(${seen.filled === ' ' ? '╳' : seen.filled})`, -1);
      break;
    case 'sounder':
      twoWay(canvas, symbol, seen, `[${seen.filled === ' ' ? ')' : seen.filled}]`, -1);
      break;
    case 'output':
      twoWay(canvas, symbol, seen, made ? `[ ${bar} ]` : '[╲  ]', -2);
      break;
    case 'coil':
    case 'valve':
    case 'input':
    case 'common':
      twoWay(
        canvas,
        symbol,
        seen,
        `[${form === 'input' ? seen.input : inBox(symbol).padEnd(3, seen.filled)}]`,
        -2,
      );
      break;
    case 'motor':
      motor(canvas, symbol, seen);
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
