/** Moments as they are read, where the reader is. */
import { words } from './words.ts';

/** `8 Dec 2026` */
export const dayOf = (at: number): string => words('first').moments.day(at);
/** `8 Dec 2026, 20:05` */
export const dayAndTime = (at: number): string => words('first').moments.dayAndTime(at);
/** `Tue 8 Dec, 20:00` */
export const whenText = (at: number): string => words('first').moments.when(at);
