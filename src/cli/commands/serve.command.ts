import { type Command, Option } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { ServeOptions } from './serve.ts';

export function addServe(program: Command, io: Io): void {
  program
    .command('serve')
    .summary('practise in the browser')
    .description(
      'Serves the page on this machine, for whoever sits at it, and keeps the answers; or, with --class, for classes.',
    )
    .option('--port <number>', 'the port; 0 takes any that is free', '8024')
    .option('--host <address>', 'the address to listen on', '127.0.0.1')
    .option('--allow-host <name...>', 'answer to this name too; may be given several times')
    .option('--class', 'people sign in: tutors, learners and an administrator (docs/classes.md)')
    .option('--address <url>', 'with --class: the address that people open, for links and slips')
    .option('--behind-proxy', 'with --class: a proxy before it speaks https and says whose request it is')
    .option('--plain-http', 'with --class: passwords may cross the network in the clear')
    .option('--data <folder>', 'where answers are kept (default: the data folder that drill uses)')
    .option('--banks <folder>', 'question banks to practise from instead of those that come with the program')
    .addOption(
      new Option('--log <level>', 'what is written to standard error, as JSON lines')
        .choices(['silent', 'error', 'warn', 'info', 'debug'] satisfies ServeOptions['log'][])
        .default('warn'),
    )
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise serve',
          'polewise serve --port 9000 --data /srv/polewise',
          'DATABASE_URL=postgres://polewise@localhost/polewise polewise serve --log info',
          'polewise serve --class --behind-proxy --address https://practice.example',
        ],
        'With DATABASE_URL answers are kept in that PostgreSQL database instead of a file.',
      ),
    )
    .action(async (options: ServeOptions) => {
      const { serve } = await import('./serve.ts');
      await serve(options, io);
    });
}
