import { type Sign, upright } from './sign.ts';

export const motor: Sign = {
  cells: ({ spots }) => ({ left: 6, right: 10, height: spots.length > 3 ? 3 : 2 }),
  write(canvas, symbol, seen) {
    upright(canvas, symbol, seen);
    const from = Math.min(symbol.x - 4, ...symbol.ports.map((port) => port.x));
    const to = Math.max(symbol.x + 4, ...symbol.ports.map((port) => port.x));
    const room = to - from - 1;
    const word = `${seen.filled}M 3~${seen.filled}`.trim();
    const pad = Math.floor((room - word.length) / 2);
    const line = `[${' '.repeat(pad)}${word}${' '.repeat(room - word.length - pad)}]`;
    canvas.put(from, symbol.top + 1, `${line}╴PE`);
  },
};
