/** One row of columns in numbers of columns, rows and channels, before it has coordinates. */
import type { Part, Run } from '../parts/index.ts';

/** A vertical line of a column: `shift` leg spacings (motors: phase spacings) from the column's own. */
export interface Lane {
  readonly column: number;
  readonly shift: number;
  readonly phase: number;
}

export interface PlacedPart {
  readonly part: Part;
  readonly column: number;
  readonly row: number;
  readonly shift: number;
  readonly flipped: boolean;
  /** By spot. */
  readonly lanes: readonly Lane[];
  readonly lastOfRun: boolean;
  /** The parts that one dashed line joins, from left to right; only this one where there is none. */
  readonly joined: readonly number[];
  /** Joined to the part in the column before: carries no name of its own. */
  readonly linked: boolean;
}

/** A motor whose terminals stand on the lines of several columns. */
export const spreadsOver = ({ lanes, column }: PlacedPart): boolean =>
  lanes.some((lane) => lane.column !== column);

export interface Pin {
  readonly port: number;
  readonly part: number;
  readonly above: boolean;
}

/** Ports of one conductor on one line without a part between them. */
export interface Cluster {
  readonly lane: Lane;
  readonly pins: readonly Pin[];
  /** Channels its vertical passes through. */
  readonly from: number;
  readonly to: number;
  /** Reaches the trunk by this riser of its column, which it joins in channel `exit`. */
  riser?: Riser;
  exit?: number;
}

/** A line at the right of a column by which its ports reach a trunk that they cannot reach straight. */
export interface Riser {
  readonly column: number;
  readonly net: number;
  /** The channel of the trunk. */
  readonly trunk: number;
}

export interface Trunk {
  readonly net: number;
  readonly channel: number;
  readonly clusters: readonly Cluster[];
  /** Goes on in an earlier or a later row: what to write there. */
  readonly before: string;
  readonly after: string;
  /** The outermost lines that its ends, with their marks, must keep clear of. */
  readonly leftmost?: Lane;
  readonly rightmost?: Lane;
  readonly supply: boolean;
  /** Where the conductors of a three-phase supply all begin, so that they run one under another; and in which order. */
  readonly lead?: Lane;
  readonly phase?: number;
  /** False: all on one line, nothing to run sideways. */
  readonly sideways: boolean;
}

export interface Section {
  readonly columns: readonly Run[];
  readonly rows: number;
  readonly standing: readonly PlacedPart[];
  readonly trunks: readonly Trunk[];
  /** By column, in the order they stand. */
  readonly risers: readonly (readonly Riser[])[];
}

export interface Ends {
  /** What a mark at the left end of this conductor says in this row, '' for none; and at its right end. */
  readonly before: (net: number, columns: readonly Run[]) => string;
  readonly after: (net: number, columns: readonly Run[]) => string;
}

/** Lines in their order from left to right, as numbers. */
export const laneKey = ({ column, shift, phase }: Lane): number => column * 4096 + (shift + 32) * 16 + phase;
