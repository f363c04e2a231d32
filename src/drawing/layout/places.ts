/** Where things are: the number of each column, and how a place is written. */
import type { Circuit } from '../../../shared/circuit.ts';
import { findFellows, type Part, type Run, type Survey, survey } from '../parts/index.ts';
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
}

/** A reference that leaves room for the letter of a piece: `/6_.9`. */
export const PIECE = /\/(\d+)_\.(\d+)/g;

/** `pieces`: references leave that room. */
export function findPlaces(circuit: Circuit, pieces = false): DrawnPlaces {
  const surveyed = survey(circuit);
  const titles = new Map(circuit.sheets.map(({ number, title }) => [number, title ?? '']));
  const bySheet = new Map<number, Run[]>();
  for (const run of surveyed.runs) {
    const list = bySheet.get(run.sheet);
    if (list) list.push(run);
    else bySheet.set(run.sheet, [run]);
  }
  const columnOfRun = new Int32Array(surveyed.runs.length);
  const sheets = [...bySheet]
    .sort(([a], [b]) => a - b)
    .map(([sheet, runs]) => {
      const levels = findLevels(surveyed, runs, []);
      const columns = orderColumns(surveyed, runs, levels);
      columns.forEach((run, index) => {
        columnOfRun[run.index] = index + 1;
      });
      return { sheet, title: titles.get(sheet) ?? '', columns, levels };
    });
  const standing = sheets.flatMap(({ columns }) =>
    columns.flatMap((run) => run.parts.map(({ part }) => surveyed.parts[part] as Part)),
  );
  const drawn = { ...surveyed, fellows: findFellows(standing) };
  const placeOfRun = (run: number): string =>
    pieces || sheets.length > 1
      ? `/${surveyed.runs[run]?.sheet}${pieces ? '_' : ''}.${columnOfRun[run]}`
      : `/${columnOfRun[run]}`;
  return { drawn, sheets, columnOfRun, placeOfRun };
}
