/** `polewise serve` as a program of its own. */
import { Command } from 'commander';
import { addServe } from '../../src/cli/commands/serve.ts';
import { runProgram } from '../../src/cli/program.ts';
import { terminalIo } from '../../src/cli/terminal-io.ts';

const io = terminalIo();
const running = { code: 0 };
const command = new Command('polewise').exitOverride();
addServe(command, io, running);
process.exitCode = await runProgram({ command, running }, process.argv.slice(2), io);
io.close();
