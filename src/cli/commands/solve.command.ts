import type { Command } from 'commander';
import { commandIn, helpAfter, severalOf } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../running.ts';
import type { SolveOptions } from './solve.ts';

/** As they are typed. */
const ACTS = [
  'press',
  'release',
  'turn',
  'make',
  'break',
  'open',
  'close',
  'trip',
  'reset',
  'on',
  'off',
  'hold',
  'free',
  'fail',
  'restore',
  'wait',
];

export function addSolve(program: Command, io: Io, running: Running): void {
  const {
    solve: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'solve', help)
    .argument(`<${values.file}>`, given.arguments.circuit)
    .option(`--do <${values.acts}>`, given.options.acts)
    .addOption(severalOf('--fault', values.fault, help.options.fault))
    .option('--dead', help.options.dead)
    .option('--json', help.options.json)
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise solve fan.txt',
          'polewise solve fan.txt --do "make -B1; wait 5 s; break -B1; hold -K3"',
          'polewise solve fan.txt --fault "-K3:14 broken" --json',
        ],
        help.acts(ACTS),
        help.rules,
        help.exit,
      ),
    )
    .action(async (file: string, options: SolveOptions) => {
      const { solveFile } = await import('./solve.ts');
      running.code = await solveFile(file, options, io);
    });
}
