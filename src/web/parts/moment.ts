/** Moments as they stand in schedules, where the reader is. */

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const time = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

/** `8 Dec 2026` */
export const dayOf = (at: number): string => day.format(at);
/** `8 Dec 2026, 20:05` */
export const dayAndTime = (at: number): string => `${day.format(at)}, ${time.format(at)}`;
