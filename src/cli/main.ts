import { ownWords } from './own-words.ts';
import { createProgram, runProgram } from './program.ts';
import { terminalIo } from './terminal-io.ts';

const io = terminalIo(await ownWords(process.env));
// A reader that has seen enough (`| head`) is no mistake.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await runProgram(createProgram(io), process.argv.slice(2), io);
io.close();
