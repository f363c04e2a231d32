/** Moments and days on paper, as they are in a time zone: `Europe/Berlin`. */
import { speech } from '../speech.ts';

const DAY = { day: 'numeric', month: 'long', year: 'numeric' } as const;
const MOMENT = { ...DAY, hour: '2-digit', minute: '2-digit', timeZoneName: 'short' } as const;

export const dates = {
  day: ({ at, zone }: { at: number; zone: string }) => speech.moment(at, { ...DAY, timeZone: zone }),
  moment: ({ at, zone }: { at: number; zone: string }) => speech.moment(at, { ...MOMENT, timeZone: zone }),
};
