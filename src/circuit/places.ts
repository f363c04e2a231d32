/** Where each part of a circuit stands in its text. All lists go by the indices of the circuit's own. */
import type { Circuit, Device, Step } from '../../shared/circuit.ts';
import type { Problem } from '../../shared/problem.ts';
import type { Concern, Finding } from './findings.ts';

export interface Place {
  /** Both from 1; columns in UTF-16 code units. */
  readonly line: number;
  readonly column: number;
}

export interface PartPlace extends Place {
  /** Columns of its single values, by field name. */
  readonly fields: ReadonlyMap<string, number>;
}

export interface TextPlaces {
  readonly supplies: readonly PartPlace[];
  readonly devices: readonly PartPlace[];
  readonly sheets: readonly Place[];
  readonly paths: readonly Place[];
  readonly steps: readonly (readonly Place[])[];
}

/** What placing needs of a circuit; while it is read, a stop may be missing. */
export interface Placed {
  readonly devices: readonly Device[];
  readonly paths: readonly { readonly steps: readonly (Step | undefined)[] }[];
}

const START: Place = { line: 1, column: 1 };

/** A terminal is placed where a path first comes to it, else where its device is declared. */
export function placeOf(circuit: Placed, places: TextPlaces, concern: Concern): Place {
  switch (concern.kind) {
    case 'circuit':
      return START;
    case 'supply':
      return places.supplies[concern.index] ?? START;
    case 'device': {
      const part = places.devices[concern.index];
      if (!part) return START;
      const { terminal, field } = concern;
      const stop = terminal === undefined ? undefined : firstStop(circuit, places, concern.index, terminal);
      if (stop) return stop;
      return { line: part.line, column: (field && part.fields.get(field)) || part.column };
    }
    case 'sheet':
      return places.sheets[concern.index] ?? START;
    case 'path':
      return places.paths[concern.path] ?? START;
    case 'step':
      return places.steps[concern.path]?.[concern.step] ?? START;
  }
}

function firstStop(
  { devices, paths }: Placed,
  places: TextPlaces,
  index: number,
  terminal: string,
): Place | undefined {
  const name = devices[index]?.name;
  for (const [path, { steps }] of paths.entries()) {
    const step = steps.findIndex(
      (s) => s !== undefined && s.device === name && [s.enter, s.leave].includes(terminal),
    );
    if (step >= 0) return places.steps[path]?.[step];
  }
  return undefined;
}

/** A finding as a problem; without places (a circuit from JSON) it has no line. */
export function problemOf(finding: Finding, circuit: Circuit, places?: TextPlaces): Problem {
  const { code, said, concern } = finding;
  if (!places) return { code, said };
  const { line, column } = placeOf(circuit, places, concern);
  return { code, line, column, said };
}
