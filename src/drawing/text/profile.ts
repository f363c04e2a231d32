/** Sizes of a drawing in character cells. */

import type { Body, Profile } from '../layout/profile.ts';
import type { Part } from '../parts/index.ts';

/** Cells on either side of the line, its own included on the right; and rows. */
function bodyOf(part: Part): Body {
  const actuator = part.actuator ? 2 : 0;
  switch (part.form) {
    case 'make':
    case 'break':
    case 'main-make':
    case 'main-break':
    case 'breaker-pole':
    case 'isolator-pole':
      return { left: 1 + actuator, right: 2, height: 3 };
    case 'changeover':
      return { left: 2 + actuator, right: 3, height: 3 };
    case 'fuse':
    case 'heater':
    case 'lamp':
    case 'sounder':
      return { left: 1, right: 2, height: 3 };
    case 'output':
      return { left: 2, right: 3, height: 3 };
    case 'coil':
    case 'valve':
    case 'input':
    case 'common':
      return { left: 2, right: 3, height: 3 };
    case 'motor':
      return { left: 6, right: 7, height: part.spots.length > 3 ? 3 : 2 };
    case 'terminal':
      return { left: 0, right: 1, height: 1 };
  }
}

export const textProfile = (columns: number): Profile => ({
  name: 'text',
  width: columns,
  body: bodyOf,
  leg: 2,
  phase: 5,
  gap: 2,
  riser: 2,
  channel: { margin: 0, pitch: 1, empty: 0 },
  join: 1,
  numberGap: 1,
  labelGap: 1,
  stub: 2,
  overhang: 1,
  markGap: 1,
  cell: 1,
  lineHeight: () => 1,
  measure: (text) => text.length,
  wraps: [9, 11, 13, 16, 20, 28],
  wrapLines: 3,
  stack: 1,
  margin: 0,
  sheetWidth: 0,
});
