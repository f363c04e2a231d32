/** Strokes as SVG path data. */
import type { Outline } from '../symbols/index.ts';
import type { Ink, Shape } from './types.ts';

/** A tenth of a unit is finer than any pen. */
export function round(value: number): string {
  const tenths = Math.round(value * 10);
  // Whole numbers become text several times faster than fractions do.
  const rest = tenths % 10;
  if (rest === 0) return String(tenths / 10);
  return tenths < 0 ? `-${(rest - tenths) / 10}.${-rest}` : `${(tenths - rest) / 10}.${rest}`;
}

const RADIANS = Math.PI / 180;

export function pathOf(stroke: Outline, x: number, y: number): string {
  switch (stroke.kind) {
    case 'line': {
      const points = stroke.points.map(([px, py]) => `${round(x + px)} ${round(y + py)}`);
      return `M${points.join('L')}${stroke.closed ? 'Z' : ''}`;
    }
    case 'circle': {
      const [cx, cy] = [x + stroke.at[0], y + stroke.at[1]];
      const r = round(stroke.r);
      return `M${round(cx - stroke.r)} ${round(cy)}a${r} ${r} 0 1 0 ${round(2 * stroke.r)} 0a${r} ${r} 0 1 0 ${round(-2 * stroke.r)} 0Z`;
    }
    case 'arc': {
      const end = (degrees: number): string =>
        `${round(x + stroke.at[0] + stroke.r * Math.cos(degrees * RADIANS))} ${round(y + stroke.at[1] + stroke.r * Math.sin(degrees * RADIANS))}`;
      const large = stroke.to - stroke.from > 180 ? 1 : 0;
      return `M${end(stroke.from)}A${round(stroke.r)} ${round(stroke.r)} 0 ${large} 1 ${end(stroke.to)}`;
    }
  }
}

/** Nothing where there is nothing to draw. */
export const shape = (ink: Ink, d: string, net?: number): Shape[] =>
  d ? [net === undefined ? { kind: 'shape', ink, d } : { kind: 'shape', ink, d, net }] : [];
