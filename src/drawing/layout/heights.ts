/** Rows and channels one under another. */
import type { LabelsFor } from './extents.ts';
import type { Profile } from './profile.ts';
import type { Section } from './section-types.ts';

export interface Heights {
  /** By row: its upper edge, and how high it is. */
  readonly rowY: readonly number[];
  readonly rowHeight: readonly number[];
  /** By channel: its first track. */
  readonly trackY: readonly number[];
  /** Below the last channel. */
  readonly end: number;
}

/** `tracks`: how many there are in each channel. `head`: the height of what stands above all. */
export function stackRows(
  { rows, standing }: Section,
  tracks: readonly number[],
  labels: LabelsFor,
  profile: Profile,
  head: number,
): Heights {
  const rowHeight = new Array<number>(rows).fill(0);
  for (const place of standing) {
    const { row, linked } = place;
    const { beside, body } = labels(place);
    rowHeight[row] = Math.max(rowHeight[row] as number, body.height, linked ? 0 : beside.height);
  }
  const { margin, pitch, empty } = profile.channel;
  const rowY: number[] = [];
  const trackY: number[] = [];
  let y = head;
  tracks.forEach((count, channel) => {
    trackY.push(y + margin);
    y += count === 0 ? empty : 2 * margin + (count - 1 + profile.cell) * pitch;
    if (channel === rows) return;
    rowY.push(y);
    y += rowHeight[channel] as number;
  });
  return { rowY, rowHeight, trackY, end: y };
}
