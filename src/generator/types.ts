import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import type { Random } from './random.ts';

/** What a family or the free maker proposes; nothing about it is trusted before `accept` has looked at it. */
export interface Draft {
  /** Family id, or `free`. */
  readonly family: string;
  readonly circuit: Circuit;
  /** What is done before reading off. */
  readonly scenario: Scenario;
  /** Further scenarios that may be asked instead; the one that tells most misconceptions apart is taken. */
  readonly others: readonly Scenario[];
  /** Loads and relays that the drawing is about, in the order of the drawing: lamps, inputs `-A1:I1`, coils. */
  readonly lamps: readonly string[];
  readonly inputs: readonly string[];
  readonly relays: readonly string[];
  /** What the last act is expected to lead to; `flashing`: a flasher runs, everything else rests. */
  readonly ends: 'steady' | 'flashing';
}

export interface DraftRequest {
  /** 1 (smallest) to 8: how big, on the family's own scale. */
  readonly size: number;
}

/** A family of random circuits of one kind. One file each, `<id>.family.ts`. */
export interface Family {
  readonly id: string;
  readonly size: { readonly min: number; readonly max: number };
  draft(random: Random, request: DraftRequest): Draft;
}
