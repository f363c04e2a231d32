import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { Running } from '../program.ts';
import type { SolveOptions } from './solve.ts';

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
    .action(async (file: string, options: SolveOptions) => {
      const { solveFile } = await import('./solve.ts');
      running.code = await solveFile(file, options, io);
    });
}
