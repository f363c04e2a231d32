/** The lines of a timing diagram: which there are, in which order, and how each stands from moment to moment. */
import type { Circuit, Device } from '../../../shared/circuit.ts';
import { anatomyOf } from '../../circuit/index.ts';
import type { ActSaid, Words } from '../../words/index.ts';

/** 0 low, 1 high; a half is between its limits: dim, or neither 0 nor 1. */
export type Level = 0 | 0.5 | 1;

export interface Change {
  /** Index of the moment; -1 before the first. */
  readonly at: number;
  readonly level: Level;
  /** The moment at which it set out, where it was on its way. */
  readonly since?: number;
}

export interface Signal {
  readonly id: string;
  readonly name: string;
  /** Which part of the device the line is of, where there are several. */
  readonly of?: 'coil' | 'contacts';
  /** The first is where it begins, before the first moment. */
  readonly changes: readonly Change[];
}

export interface ActAt {
  /** Index of the moment. */
  readonly at: number;
  readonly act: ActSaid;
}

export interface Signals {
  /**
   * Milliseconds since the beginning of each moment at which something is done or changes, ascending; the last is the end. Two of
   * the same time are one after the other.
   */
  readonly moments: readonly number[];
  readonly signals: readonly Signal[];
  readonly acts: readonly ActAt[];
  /** Whether relays take their own operate and release times; they follow at once where they don't. */
  readonly operateTimes: boolean;
}

/** Before anything is done. */
export const BEFORE = -1;

/** What a line is of, and where it stands among the others: hands and plant, coils and contacts, loads. */
export interface Line extends Pick<Signal, 'id' | 'name' | 'of'> {
  readonly rank: number;
}

/** Whether a feeding device is closed in that position, and any other has left the position it is drawn in. */
export function isHigh(device: Device | undefined, position: number): boolean {
  if (!device) return false;
  const { mechanisms, contacts } = anatomyOf(device);
  return mechanisms[0]!.drive === 'feed' ? contacts[0]!.closedIn.includes(position) : position !== 0;
}

export const isFeeding = (device: Device | undefined): boolean =>
  device !== undefined && anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed');

/** Collects lines and their changes, in whatever order these come. */
export class Lines {
  private readonly found = new Map<
    string,
    { readonly line: Line; readonly idle: Level; readonly changes: Change[] }
  >();
  private readonly place: ReadonlyMap<string, number>;

  constructor({ devices }: Circuit) {
    this.place = new Map(devices.map(({ name }, index) => [name, index]));
  }

  /** How a line stands from a moment on; `idle` is where it begins, if this is the first that is heard of it. */
  stands(line: Line, change: Change, idle: Level): void {
    const known = this.found.get(line.id) ?? { line, idle, changes: [{ at: BEFORE, level: idle }] };
    this.found.set(line.id, known);
    const last = known.changes.at(-1)!;
    if (change.at === last.at) known.changes[known.changes.length - 1] = change;
    else if (change.level !== last.level || change.since !== undefined) known.changes.push(change);
  }

  /** Those that are ever otherwise than idle, in the order of the drawing. */
  all(): Signal[] {
    const placeOf = (id: string): number => this.place.get(id.split(/[ :]/)[0]!) ?? 0;
    return [...this.found.values()]
      .filter(({ idle, changes }) => changes.some(({ level }) => level !== idle))
      .sort(({ line: one }, { line: two }) => one.rank - two.rank || placeOf(one.id) - placeOf(two.id))
      .map(({ line: { rank: _, ...line }, changes }) => ({ ...line, changes }));
  }
}

/** What stands before a line: `-K1 coil`. */
export const nameOf = ({ drawing: { timing } }: Pick<Words, 'drawing'>, { name, of }: Signal): string =>
  of === undefined ? name : timing[of](name);
