import { aboutContacts } from './contacts.ts';
import { aboutRelays } from './relays.ts';
import { aboutSealsAndTimes } from './seals-and-times.ts';
import { aboutSeriesAndLosses } from './series-and-losses.ts';
import { aboutSuppliesAndInputs } from './supplies-and-inputs.ts';
import type { ThreeCircuits } from './three-circuits.ts';

export const THREE_CIRCUITS: readonly ThreeCircuits[] = [
  ...aboutContacts,
  ...aboutRelays,
  ...aboutSealsAndTimes,
  ...aboutSeriesAndLosses,
  ...aboutSuppliesAndInputs,
];
