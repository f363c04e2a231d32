/** Where what is laid over a drawing stands, in the styles' words. */
import type { Sheet, Spot } from '../engine/messages.ts';

export const percent = (share: number): string => `${(100 * share).toFixed(3)}%`;

/** Round what is drawn of a symbol, without its leads, in the drawing's pixels: a ring's width and height. */
const RINGS: Readonly<Record<Spot['kind'], readonly [number, number]>> = {
  load: [28, 28],
  coil: [36, 24],
  input: [38, 24],
  contact: [34, 30],
  terminal: [11, 11],
};

/** From this share of the width on a tag grows to the left, and up to the other one to the right. */
const NEAR_EDGE = 0.8;
const NEAR_BEGIN = 0.2;

/** A tag grows to the left at the sheet's edge, and at the left of two terminals that stand beside each other. */
export function edgeOf({ x, width, aside = 0 }: Spot): string {
  const middle = x + width / 2;
  return middle > NEAR_EDGE || (aside < 0 && middle > NEAR_BEGIN) ? 'edge' : '';
}

/** Where a target stands and how large its ring is; it grows with the drawing. */
export function placed(spot: Spot, sheet: Sheet): Record<string, string> {
  const [across, high] = RINGS[spot.kind];
  const share = (pixels: number): string => `${((100 * pixels) / sheet.width).toFixed(3)}cqw`;
  return {
    left: percent(spot.x + spot.width / 2),
    top: percent(spot.y + spot.height / 2),
    '--across': share(across),
    '--high': share(high),
    '--letters': share(11.5),
    ...(spot.aside ? { '--aside': share(spot.aside) } : {}),
  };
}
