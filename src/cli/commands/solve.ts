import type { Circuit } from '../../../shared/circuit.ts';
import type { Blocker, LoadTrace, Solution, TraceHop } from '../../../shared/solution.ts';
import { actInWords } from '../../circuit/index.ts';
import { solve } from '../../solver/index.ts';
import { givenCircuit } from '../given-circuit.ts';
import type { Io } from '../io.ts';
import { outcomeText } from '../outcome-text.ts';
import { type Style, styleFor, wrapText } from '../style.ts';

export interface SolveOptions {
  readonly do?: string;
  readonly fault?: string[];
  readonly dead?: boolean;
  readonly json?: boolean;
}

const hopText = ({ device, enter, leave }: TraceHop): string =>
  `${device}:${enter}${leave ? `-${leave}` : ''}`;

const BECAUSE: Readonly<Record<Blocker['because'], string>> = {
  rest: 'open at rest',
  moved: 'open, its device has moved',
  travelling: 'open on its way',
  fault: 'open by a fault',
};

function traceText({ fed, path, stoppedBy }: LoadTrace): string {
  if (fed) return path.map(hopText).join('  ');
  if (stoppedBy.length === 0) return 'nothing connects it to a supply';
  const places = stoppedBy.map(({ because, ...hop }) => `${hopText(hop)} (${BECAUSE[because]})`);
  return `stopped at ${places.join(' and ')}`;
}

function table(rows: readonly (readonly string[])[]): string[] {
  const widths = rows.reduce<number[]>(
    (sizes, row) => row.map((cell, at) => Math.max(sizes[at] ?? 0, cell.length)),
    [],
  );
  return rows.map(
    (row) =>
      `  ${row
        .map((cell, at) => cell.padEnd(widths[at]!))
        .join('  ')
        .trimEnd()}`,
  );
}

function solutionText(circuit: Circuit, solution: Solution, io: Io): string {
  const style: Style = styleFor(io);
  const textOf = (id: string): string => circuit.devices.find(({ name }) => name === id)?.text ?? '';
  const lines: string[] = [];
  const section = (title: string, rows: readonly (readonly string[])[]): void => {
    if (rows.length > 0) lines.push('', style.strong(title), ...table(rows));
  };
  lines.push(wrapText(`${style.strong('Outcome:')} ${outcomeText(solution.outcome)}.`, io.columns, '  '));
  const reading = (records: Readonly<Record<string, string>>) =>
    Object.entries(records).map(([id, state]) => [id, state, textOf(id)]);
  section(
    'Coils',
    Object.entries(solution.coils).map(([id, coil]) => [
      id,
      coil.operated ? 'operated' : 'at rest',
      coil.band === 'between' ? 'between its limits' : coil.energised ? 'energised' : '',
      `${Number(coil.volts.toPrecision(4))} V`,
      textOf(id),
    ]),
  );
  section('Lamps', reading(solution.lamps));
  section('Other loads', reading(solution.loads));
  section('Inputs', reading(solution.inputs));
  section(
    'What happened',
    solution.steps.map(({ ms, what, device, to }) => [
      `${ms} ms`,
      what === 'act' ? `> ${to}` : `  ${device} ${what} ${what === to ? '' : to}`.trimEnd(),
    ]),
  );
  section(
    'Why',
    solution.trace.map((trace) => [trace.load, traceText(trace)]),
  );
  return lines.join('\n');
}

/** Says what a circuit does; gives the exit code. */
export async function solveFile(file: string, options: SolveOptions, io: Io): Promise<0 | 1 | 2> {
  const given = await givenCircuit(io, file, options);
  if (!given) return 2;
  const { circuit, scenario } = given;
  const { solution } = solve(circuit, scenario, (act) => actInWords(act, circuit));
  if (options.json) io.out(JSON.stringify(solution, null, 2));
  else io.out(solutionText(circuit, solution, io));
  return solution.outcome.kind === 'undecided' ? 1 : 0;
}
