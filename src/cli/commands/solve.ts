import type { Circuit } from '../../../shared/circuit.ts';
import type { Happening, LoadTrace, Solution, TraceHop } from '../../../shared/solution.ts';
import { actSaid, checkRules, problemOf } from '../../circuit/index.ts';
import { everyRule, solve } from '../../solver/index.ts';
import type { CommandWords } from '../../words/commands.ts';
import { say } from '../../words/index.ts';
import { tellProblem } from '../../words/problems.ts';
import { coreWordsOf } from '../core-words.ts';
import { type GivenCircuit, givenCircuit } from '../given-circuit.ts';
import type { Io } from '../io.ts';
import { outcomeText } from '../outcome-text.ts';
import { problemText } from '../problems.ts';
import { type Style, styleFor, wrapText } from '../style.ts';

export interface SolveOptions {
  readonly do?: string;
  readonly fault?: string[];
  readonly dead?: boolean;
  readonly json?: boolean;
}

const hopText = ({ device, enter, leave }: TraceHop): string =>
  `${device}:${enter}${leave ? `-${leave}` : ''}`;

function traceText({ fed, path, stoppedBy }: LoadTrace, { solve: said }: CommandWords): string {
  if (fed) return path.map(hopText).join('  ');
  if (stoppedBy.length === 0) return said.nothingConnects;
  const places = stoppedBy.map(({ because, ...hop }) =>
    said.openAt({ at: hopText(hop), because: said.because[because] }),
  );
  return said.stoppedAt(places);
}

function happeningText({ what, device, to }: Happening, { solve: said }: CommandWords): string {
  if (what === 'act') return `> ${to}`;
  const states: Readonly<Record<string, string>> =
    what === 'input' ? said.inputs : what === 'lamp' || what === 'load' ? said.loads : said.positions;
  // A selector's positions are called as whoever drew it calls them.
  return `  ${said.happened[what]({ device, to: states[to] ?? to })}`;
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
  const { solve: said } = io.words;
  const style: Style = styleFor(io);
  const textOf = (id: string): string => circuit.devices.find(({ name }) => name === id)?.text ?? '';
  const lines: string[] = [];
  const section = (title: string, rows: readonly (readonly string[])[]): void => {
    if (rows.length > 0) lines.push('', style.strong(title), ...table(rows));
  };
  const outcome = outcomeText(solution.outcome, io.words);
  lines.push(wrapText(said.outcome({ strong: style.strong, outcome }), io.columns, '  '));
  const reading = <S extends string>(
    records: Readonly<Record<string, S>>,
    states: Readonly<Record<S, string>>,
  ) => Object.entries(records).map(([id, state]) => [id, states[state], textOf(id)]);
  section(
    said.sections.coils,
    Object.entries(solution.coils).map(([id, coil]) => [
      id,
      coil.operated ? said.coil.operated : said.coil.atRest,
      coil.band === 'between' ? said.coil.between : coil.energised ? said.coil.energised : '',
      said.coil.volts(Number(coil.volts.toPrecision(4))),
      textOf(id),
    ]),
  );
  section(said.sections.lamps, reading(solution.lamps, said.loads));
  section(said.sections.loads, reading(solution.loads, said.loads));
  section(said.sections.inputs, reading(solution.inputs, said.inputs));
  section(
    said.sections.happened,
    solution.steps.map((step) => [said.milliseconds(step.ms), happeningText(step, io.words)]),
  );
  section(
    said.sections.why,
    solution.trace.map((trace) => [trace.load, traceText(trace, io.words)]),
  );
  return lines.join('\n');
}

/** Tells what breaks the rules: the circuit is solved all the same, so it goes where problems go. */
async function tellFindings({ circuit, places }: GivenCircuit, file: string, io: Io): Promise<void> {
  const findings = checkRules(circuit, everyRule);
  if (findings.length === 0) return;
  const words = await coreWordsOf(io);
  for (const finding of findings)
    io.err(problemText(tellProblem(words, problemOf(finding, circuit, places)), file, io));
  io.err(io.words.solve.solvedAsItIs(findings.length));
}

/** Says what a circuit does; gives the exit code. */
export async function solveFile(file: string, options: SolveOptions, io: Io): Promise<0 | 1 | 2> {
  const given = await givenCircuit(io, file, options);
  if (!given) return 2;
  const { circuit, scenario } = given;
  const { acts } = await coreWordsOf(io);
  const { solution } = solve(circuit, scenario, (act) => say(acts, actSaid(act, circuit)));
  if (options.json) io.out(JSON.stringify(solution, null, 2));
  else io.out(solutionText(circuit, solution, io));
  await tellFindings(given, file, io);
  return solution.outcome.kind === 'undecided' ? 1 : 0;
}
