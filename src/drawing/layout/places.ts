/** Where things are: the number of each column, and how a place is written. */
import type { Circuit } from '../../../shared/circuit.ts';
import { type Part, type Run, type Survey, survey } from '../parts/index.ts';
import { findLevels, type Levels } from './levels.ts';
import { orderColumns } from './order.ts';

export interface SheetColumns {
  readonly sheet: number;
  readonly title: string;
  readonly columns: readonly Run[];
  /** Rows and channels with all columns side by side. */
  readonly levels: Levels;
}

export interface DrawnPlaces {
  readonly drawn: Survey;
  readonly sheets: readonly SheetColumns[];
  /** By run: its column number, counted from 1 on each sheet. */
  readonly columnOfRun: Int32Array;
  /** `/4`, or `/2.4` where there are several sheets; `/2_.4` where a page's letter may come to stand between. */
  readonly placeOfRun: (run: number) => string;
  /** By mechanism: the part that is its coil (a latching relay's set coil). */
  readonly coilOf: ReadonlyMap<string, Part>;
  /** By mechanism: the drawn contacts. */
  readonly contactsOf: ReadonlyMap<string, readonly Part[]>;
}

/** A reference that leaves room for the letter of a piece: `/6_.9`. */
export const PIECE = /\/(\d+)_\.(\d+)/g;

/** `pieces`: references leave that room. */
export function findPlaces(circuit: Circuit, pieces = false): DrawnPlaces {
  const drawn = survey(circuit);
  const titles = new Map(circuit.sheets.map(({ number, title }) => [number, title ?? '']));
  const bySheet = new Map<number, Run[]>();
  for (const run of drawn.runs) {
    const list = bySheet.get(run.sheet);
    if (list) list.push(run);
    else bySheet.set(run.sheet, [run]);
  }
  const columnOfRun = new Int32Array(drawn.runs.length);
  const sheets = [...bySheet]
    .sort(([a], [b]) => a - b)
    .map(([sheet, runs]) => {
      const levels = findLevels(drawn, runs, []);
      const columns = orderColumns(drawn, runs, levels);
      columns.forEach((run, index) => {
        columnOfRun[run.index] = index + 1;
      });
      return { sheet, title: titles.get(sheet) ?? '', columns, levels };
    });
  const coilOf = new Map<string, Part>();
  const contactsOf = new Map<string, Part[]>();
  for (const part of drawn.parts) {
    if (!part.mechanism) continue;
    if (part.form === 'coil') {
      if (!coilOf.has(part.mechanism)) coilOf.set(part.mechanism, part);
      continue;
    }
    const list = contactsOf.get(part.mechanism);
    if (list) list.push(part);
    else contactsOf.set(part.mechanism, [part]);
  }
  const placeOfRun = (run: number): string =>
    pieces || sheets.length > 1
      ? `/${drawn.runs[run]?.sheet}${pieces ? '_' : ''}.${columnOfRun[run]}`
      : `/${columnOfRun[run]}`;
  return { drawn, sheets, columnOfRun, placeOfRun, coilOf, contactsOf };
}
