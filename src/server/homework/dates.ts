import { ApiFailure } from '../problems.ts';

/** @throws ApiFailure when there is no such time zone (`Europe/Berlin`) */
export function checkZone(zone: string): void {
  try {
    new Intl.DateTimeFormat(undefined, { timeZone: zone });
  } catch {
    throw new ApiFailure({ says: 'bad-value.noZone', zone });
  }
}
