/** Names that are used once: supplies, devices and sheets. */
import type { Concern } from '../findings.ts';
import { type PartialCircuit, type Unsound, unsoundAt } from './types.ts';

/** Indices of all but the first of equal names. */
export function repeated(names: readonly (string | number)[]): number[] {
  const seen = new Set<string | number>();
  return names.flatMap((name, index) => {
    if (seen.has(name)) return [index];
    seen.add(name);
    return [];
  });
}

interface NameTaken {
  readonly kind: 'supply' | 'device';
  readonly name: string;
  readonly concern: Concern;
}

/** Supplies and devices whose name is taken. */
export const namesTwice = (circuit: Pick<PartialCircuit, 'supplies' | 'devices'>): NameTaken[] =>
  (['supply', 'device'] as const).flatMap((kind) => {
    const named = kind === 'supply' ? circuit.supplies : circuit.devices;
    return repeated(named.map(({ name }) => name)).map((index) => ({
      kind,
      name: named[index]!.name,
      concern: { kind, index },
    }));
  });

/** Sheets that are listed twice, and the first path on one that isn't listed. */
export function listedSheets({ sheets, paths: all }: PartialCircuit): Unsound[] {
  const twice = repeated(sheets.map(({ number }) => number)).map((index) =>
    unsoundAt({ says: 'duplicate-sheet', number: sheets[index]!.number }, { kind: 'sheet', index }),
  );
  const listed = new Set(sheets.map(({ number }) => number));
  const lost = all.findIndex(({ sheet }) => !listed.has(sheet));
  if (lost < 0) return twice;
  const number = all[lost]!.sheet;
  return [...twice, unsoundAt({ says: 'sheet-not-listed', number }, { kind: 'path', path: lost })];
}
