/** Strokes as SVG path data. */
import type { Stroke } from '../symbols/index.ts';

/** A tenth of a unit is finer than any pen. */
export const round = (value: number): string => String(Math.round(value * 10) / 10);

const RADIANS = Math.PI / 180;

export function pathOf(stroke: Exclude<Stroke, { kind: 'letter' }>, x: number, y: number): string {
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
