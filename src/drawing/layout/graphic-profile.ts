/** Profiles of drawings made of lines: a phone, a screen, a sheet of A4. One unit is a pixel, or 0.25 mm on paper. */
import type { Part } from '../parts/index.ts';
import { JOIN, LEG, PHASE, symbolFor } from '../symbols/index.ts';
import { letterHeight, letterWidth } from './lettering.ts';
import type { Body, Page, PagedProfile, Profile } from './profile.ts';

export type Width = 'phone' | 'screen' | 'a4';

export const MM = 4;

const MARGIN = 10;
/** A4 landscape: 297 x 210 mm, 20 mm for binding, 10 mm elsewhere. */
export const A4 = {
  width: 297 * MM,
  height: 210 * MM,
  left: 20 * MM,
  edge: 10 * MM,
  block: 14 * MM,
  /** Between the frame and the drawing. */
  inner: 5 * MM,
  cells: [330, 260],
} as const satisfies Page;

const UPRIGHT = { ...A4, width: A4.height, height: A4.width, cells: [290, 200] } as const satisfies Page;

const across = ({ width, left, edge, inner }: Page): number => width - left - edge - 2 * inner;

const CONTENT: Readonly<Record<Width, number>> = {
  phone: 360 - 2 * MARGIN,
  screen: 1000 - 2 * MARGIN,
  a4: across(A4),
};

const bodies = new Map<string, Body>();

function bodyOf({ look, form, actuator, delay, winding, spots }: Part): Body {
  const known = bodies.get(look);
  if (known) return known;
  const { left, right, height } = symbolFor({
    form,
    ...(actuator ? { actuator } : {}),
    ...(delay ? { delay } : {}),
    ...(winding ? { winding } : {}),
    terminals: spots.length,
    flipped: false,
    above: true,
  });
  const body = { left, right, height };
  bodies.set(look, body);
  return body;
}

const profile = (width: Width): Profile => ({
  name: width,
  width: CONTENT[width],
  body: bodyOf,
  leg: LEG,
  phase: PHASE,
  gap: 8,
  riser: 12,
  channel: { margin: 9, pitch: 15, empty: 10 },
  join: JOIN,
  numberGap: 4,
  labelGap: 3,
  stub: 8,
  markGap: 6,
  cell: 0,
  lineHeight: letterHeight,
  measure: letterWidth,
  wraps: width === 'phone' ? [46, 56, 70, 90, 120] : [52, 66, 84, 110, 150],
  wrapLines: 3,
  stack: 26,
  margin: MARGIN,
  sheetWidth: width === 'phone' ? 360 : 0,
});

const across4 = { ...profile('a4'), page: A4 };

export const PROFILES = {
  phone: profile('phone'),
  screen: profile('screen'),
  a4: { ...across4, turned: { ...across4, width: across(UPRIGHT), page: UPRIGHT } },
} as const satisfies Readonly<Record<Width, Profile>> & { readonly a4: PagedProfile };
