import type { TriedPlace } from '../../../shared/homework.ts';

/** A circuit of an open paper that was to be marked or run elsewhere, on its way to the server. */
export interface Tried {
  readonly circuit: string;
  readonly place: TriedPlace;
}
