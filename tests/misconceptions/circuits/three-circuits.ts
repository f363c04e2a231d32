/** What is told of a misconception by circuits that were worked out by hand. */

/** What is read of lamps, inputs and coils; between two terminals `24 V`, or `nothing` without a common reference. */
type Answers = Readonly<Record<string, string>>;

export interface Told {
  /** Notation. */
  readonly on: string;
  readonly does: string;
  readonly faults?: string;
  /** Pairs of terminals that are measured; their answers are under `A:L to B:L-`. */
  readonly meters?: readonly (readonly [string, string])[];
  /** What is right for everything that there is. */
  readonly right: Answers;
}

export interface ThreeCircuits {
  readonly id: string;
  /** Here somebody with the idea answers otherwise: what is in `instead`, and the rest right. */
  readonly shows: readonly (Told & { readonly instead: Answers })[];
  /** Here is what the idea is about, and somebody who has it is right all the same. */
  readonly nearly: readonly Told[];
  /** Here the wrong answer comes from another idea; somebody with this one answers what is in `own`, or else right. */
  readonly another: Told & { readonly other: string; readonly instead: Answers; readonly own?: Answers };
}
