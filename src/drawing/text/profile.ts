/** Sizes of a drawing in character cells. */

import type { Profile } from '../layout/profile.ts';
import { SIGNS } from './signs.ts';

export const textProfile = (columns: number): Profile => ({
  name: 'text',
  width: columns,
  body: (part) => SIGNS[part.form].cells(part),
  leg: 2,
  phase: 5,
  gap: 2,
  riser: 2,
  channel: { margin: 0, pitch: 1, empty: 0 },
  join: 1,
  numberGap: 1,
  labelGap: 1,
  stub: 2,
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
