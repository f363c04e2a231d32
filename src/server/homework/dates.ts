import { ApiFailure } from '../problems.ts';

/**
 * A moment or a day in words, as it is in a time zone (`Europe/Berlin`).
 *
 * @throws ApiFailure when there is no such zone
 */
export function wordsFor(zone: string): { moment(at: number): string; day(at: number): string } {
  try {
    const dated = { day: 'numeric', month: 'long', year: 'numeric', timeZone: zone } as const;
    const day = new Intl.DateTimeFormat('en-GB', dated);
    const timed = { ...dated, hour: '2-digit', minute: '2-digit', timeZoneName: 'short' } as const;
    const moment = new Intl.DateTimeFormat('en-GB', timed);
    return { moment: (at) => moment.format(at), day: (at) => day.format(at) };
  } catch {
    throw new ApiFailure('bad-value', `There is no time zone ${zone}.`, 'For example Europe/Berlin, or UTC.');
  }
}
