import { Command, CommanderError } from 'commander';
import { commandTrouble } from './command-trouble.ts';
import { addAsk } from './commands/ask.command.ts';
import { addBackup } from './commands/backup.command.ts';
import { addBank } from './commands/bank.command.ts';
import { addClass } from './commands/class/class.command.ts';
import { addDemo } from './commands/demo.command.ts';
import { addDraw } from './commands/draw.command.ts';
import { addDrill } from './commands/drill.command.ts';
import { addHomework } from './commands/homework/homework.command.ts';
import { addLearner } from './commands/learner.command.ts';
import { addMark } from './commands/mark.command.ts';
import { addRebuild } from './commands/rebuild.command.ts';
import { addServe } from './commands/serve.command.ts';
import { addSolve } from './commands/solve.command.ts';
import { addTiming } from './commands/timing.command.ts';
import { helpIn } from './help.ts';
import { type Io, UsageError } from './io.ts';
import type { Running } from './running.ts';
import { ownVersion } from './version.ts';

export interface Program {
  readonly command: Command;
  readonly running: Running;
}

/** The whole command line, on the given terminal. */
export function createProgram(io: Io): Program {
  const { words } = io;
  const running: Running = { code: 0 };
  const command = new Command('polewise');
  command
    .description(words.program.description)
    .exitOverride()
    .configureOutput({
      writeOut: (text) => io.out(text.trimEnd()),
      writeErr: (text) => io.err(text.trimEnd()),
      getOutHelpWidth: () => io.columns,
      getErrHelpWidth: () => io.columns,
      getOutHasColors: () => io.colour,
      getErrHasColors: () => io.colour,
      // Told with everything else that is wrong, by `runProgram`.
      outputError: () => undefined,
    })
    .configureHelp(helpIn(words))
    .version(`polewise ${ownVersion()}`, '--version', words.program.options.version)
    .helpOption('-h, --help', words.program.options.help)
    .helpCommand(`help [${words.values.command}]`, words.program.help)
    .showSuggestionAfterError()
    .addHelpText('after', `\n${words.program.caution}`);
  for (const add of [
    addServe,
    addDrill,
    addAsk,
    addMark,
    addSolve,
    addDraw,
    addTiming,
    addBank,
    addClass,
    addHomework,
    addLearner,
    addDemo,
    addBackup,
    addRebuild,
  ])
    add(command, io, running);
  return { command, running };
}

/** `help ask` is `ask --help`, so that a command gets what its help has to name before it is shown. */
function asked(words: readonly string[], program: Command): readonly string[] {
  const [first, ...named] = words;
  const known = program.commands.some((one) => one.name() === named[0]);
  return first === 'help' && known ? [...named, '--help'] : words;
}

/**
 * Runs one command line.
 *
 * @returns the exit code: 0 done, 2 a mistake in what was asked for or given, 1 a fault of the program itself
 */
export async function runProgram(
  { command, running }: Program,
  words: readonly string[],
  io: Io,
): Promise<number> {
  try {
    await command.parseAsync(asked(words, command), { from: 'user' });
    return running.code;
  } catch (error) {
    if (error instanceof CommanderError && (error.exitCode === 0 || error.code === 'commander.help'))
      return error.exitCode === 0 ? 0 : 2;
    const trouble = error instanceof CommanderError ? commandTrouble(error, command, words, io.words) : error;
    if (trouble instanceof UsageError) {
      io.err(trouble.hint ? `${trouble.message}\n    ${trouble.hint}` : trouble.message);
      return 2;
    }
    const { program: said } = io.words;
    io.err(said.fault(error instanceof Error ? error.message : String(error)));
    if (io.environment['POLEWISE_TRACE'] && error instanceof Error) io.err(error.stack ?? '');
    else io.err(`    ${said.reportIt}`);
    return 1;
  }
}
