/** Plant words of our own, so that every drawing reads as one from somewhere. */
import { ferryRamp } from './ferry-ramp.ts';
import { flourLine } from './flour-line.ts';
import { iceWorks } from './ice-works.ts';
import { nursery } from './nursery.ts';
import type { Plant } from './types.ts';

export { BUTTON_COLOURS, LAMP_COLOURS, type Meaning, type Purpose } from './colours.ts';
export { nextStep } from './entries.ts';
export type * from './types.ts';

export const plants: readonly Plant[] = [nursery, iceWorks, ferryRamp, flourLine];
