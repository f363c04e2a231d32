/** Marks and items as they are counted. */
import { speech } from '../../speech.ts';

/** `1 mark`, `12 marks` */
export const marks = (count: number): string =>
  speech.plural(count, { one: '1 mark', other: `${count} marks` });

/** What was earned: to a hundredth, and no more places than there are. */
export const earned = (count: number): string => String(Math.round(100 * count) / 100);

export const items = (count: number): string =>
  speech.plural(count, { one: '1 item', other: `${count} items` });
