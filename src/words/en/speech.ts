import { speechOf } from '../speech.ts';

export const speech = speechOf('en-GB');
