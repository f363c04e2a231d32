import { type Lane, laneKey, type PlacedPart } from './section-types.ts';

/** Which rows of which columns are taken by parts, and which channels of which lines by conductors. */
export class Occupied {
  private readonly rows: Uint8Array[];
  private readonly lanes = new Map<number, { from: number; to: number }[]>();
  private readonly ofColumn: Map<number, Lane>[];

  constructor(columns: number, rows: number, standing: readonly PlacedPart[]) {
    this.rows = Array.from({ length: columns }, () => new Uint8Array(rows + 1));
    this.ofColumn = Array.from({ length: columns }, () => new Map<number, Lane>());
    for (const { row, column, lanes } of standing) {
      (this.rows[column] as Uint8Array)[row] = 1;
      for (const lane of lanes) (this.rows[lane.column] as Uint8Array)[row] = 1;
    }
  }

  /** No part stands on this column between the two channels. */
  rowsFree(column: number, from: number, to: number): boolean {
    const rows = this.rows[column] as Uint8Array;
    for (let row = from; row < to; row++) if (rows[row]) return false;
    return true;
  }

  laneFree(lane: Lane, from: number, to: number): boolean {
    return (this.lanes.get(laneKey(lane)) ?? []).every((taken) => taken.to < from || to < taken.from);
  }

  take(lane: Lane, from: number, to: number): void {
    const key = laneKey(lane);
    const list = this.lanes.get(key);
    if (list) list.push({ from, to });
    else this.lanes.set(key, [{ from, to }]);
    this.ofColumn[lane.column]?.set(key, lane);
  }

  /** The column's lines on which a conductor stands in this channel. */
  linesIn(column: number, channel: number): Lane[] {
    return [...(this.ofColumn[column] ?? [])]
      .filter(([key]) => this.lanes.get(key)?.some(({ from, to }) => from <= channel && channel <= to))
      .map(([, lane]) => lane);
  }
}
