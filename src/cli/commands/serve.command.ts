import { type Command, Option } from 'commander';
import { commandIn, helpAfter, severalOf } from '../help.ts';
import type { Io } from '../io.ts';
import type { ServeOptions } from './serve.ts';

export function addServe(program: Command, io: Io): void {
  const {
    serve: { help },
    given,
    values,
  } = io.words;
  commandIn(program, 'serve', help)
    .option(`--port <${values.number}>`, help.options.port, '8024')
    .option(`--host <${values.address}>`, help.options.host, '127.0.0.1')
    .addOption(severalOf('--allow-host', values.name, help.options.allowHost))
    .option('--class', help.options.class)
    .option(`--address <${values.url}>`, help.options.address)
    .option('--behind-proxy', help.options.behindProxy)
    .option('--plain-http', help.options.plainHttp)
    .option(`--data <${values.folder}>`, help.options.data)
    .option(`--banks <${values.folder}>`, given.options.ownBanks)
    .addOption(
      new Option(`--log <${values.level}>`, help.options.log)
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
        help.note,
      ),
    )
    .action(async (options: ServeOptions) => {
      const { serve } = await import('./serve.ts');
      await serve(options, io);
    });
}
