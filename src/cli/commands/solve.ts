import type { Command } from 'commander';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Blocker, LoadTrace, Solution, TraceHop } from '../../../shared/solution.ts';
import { actInWords } from '../../circuit/index.ts';
import { solve } from '../../solver/index.ts';
import { givenCircuit } from '../given-circuit.ts';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import { outcomeText } from '../outcome-text.ts';
import type { Running } from '../program.ts';
import { type Style, styleFor, wrapText } from '../style.ts';

interface Options {
  readonly do?: string;
  readonly fault?: string[];
  readonly dead?: boolean;
  readonly json?: boolean;
}

export function addSolve(program: Command, io: Io, running: Running): void {
  program
    .command('solve')
    .summary('what a circuit does')
    .description(
      'Says what a circuit does: every coil, lamp and input after the acts, how it came about, and why.',
    )
    .argument('<file>', 'a circuit in the notation or in JSON; - for standard input')
    .option('--do <acts>', 'what is done, in order')
    .option('--fault <fault...>', 'what is wrong from the start; may be given several times')
    .option('--dead', 'start with isolators and breakers open, as drawn')
    .option('--json', 'print the solution as JSON')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise solve fan.txt',
          'polewise solve fan.txt --do "make -B1; wait 5 s; break -B1; hold -K3"',
          'polewise solve fan.txt --fault "-K3:14 broken" --json',
        ],
        'Acts: press, release, turn, make, break, open, close, trip, reset, on, off, hold, free, fail, restore, wait.',
        'Exit code 0 for every outcome that is certain, 1 for one that could not be decided; 2 for a mistake in the circuit, the acts or the faults.',
      ),
    )
    .action(async (file: string, options: Options) => {
      const given = await givenCircuit(io, file, options);
      if (!given) {
        running.code = 2;
        return;
      }
      const { circuit, scenario } = given;
      const { solution } = solve(circuit, scenario, (act) => actInWords(act, circuit));
      if (options.json) io.out(JSON.stringify(solution, null, 2));
      else io.out(solutionText(circuit, solution, io));
      if (solution.outcome.kind === 'undecided') running.code = 1;
    });
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
