/** Names that are used once: supplies, devices and sheets. */
import type { PartialCircuit, Unsound, Wrong } from './types.ts';

/** Indices of all but the first of equal names. */
export function repeated(names: readonly (string | number)[]): number[] {
  const seen = new Set<string | number>();
  return names.flatMap((name, index) => {
    if (seen.has(name)) return [index];
    seen.add(name);
    return [];
  });
}

export const duplicateDesignation = (name: string): Wrong => ({
  code: 'duplicate-designation',
  message: `The designation ${name} is used twice.`,
  hint: 'Give every device a designation of its own.',
});

export const duplicateSupply = (name: string): Wrong => ({
  code: 'duplicate-supply',
  message: `There are two supplies ${name}.`,
  hint: 'Give every supply a letter of its own.',
});

/** Supplies and devices whose name is taken. */
export const namesTwice = ({
  supplies,
  devices,
}: Pick<PartialCircuit, 'supplies' | 'devices'>): Unsound[] => [
  ...repeated(supplies.map(({ name }) => name)).map(
    (index): Unsound => ({
      ...duplicateSupply(supplies[index]!.name),
      concern: { kind: 'supply', index },
    }),
  ),
  ...repeated(devices.map(({ name }) => name)).map(
    (index): Unsound => ({
      ...duplicateDesignation(devices[index]!.name),
      concern: { kind: 'device', index },
    }),
  ),
];

/** Sheets that are listed twice, and the first path on one that isn't listed. */
export function listedSheets({ sheets, paths: all }: PartialCircuit): Unsound[] {
  const twice = repeated(sheets.map(({ number }) => number)).map(
    (index): Unsound => ({
      code: 'duplicate-sheet',
      message: `Sheet ${sheets[index]!.number} is listed twice.`,
      hint: 'List every sheet once.',
      concern: { kind: 'sheet', index },
    }),
  );
  const listed = new Set(sheets.map(({ number }) => number));
  const lost = all.findIndex(({ sheet }) => !listed.has(sheet));
  if (lost < 0) return twice;
  const { sheet } = all[lost]!;
  const missing: Unsound = {
    code: 'sheet-not-listed',
    message: `A path is on sheet ${sheet}, and sheets doesn't list it.`,
    hint: `Add { "number": ${sheet} } to sheets.`,
    concern: { kind: 'path', path: lost },
  };
  return [...twice, missing];
}
