import type { Command } from 'commander';
import { commandIn, helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { DemoOptions } from './demo.ts';

export function addDemo(program: Command, io: Io): void {
  const {
    demo: { help },
    values,
  } = io.words;
  commandIn(program, 'demo', help)
    .option(`--data <${values.folder}>`, help.options.data, 'demo-data')
    .option(`--port <${values.number}>`, help.options.port, '8024')
    .option('--fresh', help.options.fresh)
    .option('--no-serve', help.options.noServe)
    .addHelpText('after', helpAfter(io, ['polewise demo', 'polewise demo --port 9000']))
    .action(async (options: DemoOptions) => {
      const { demo } = await import('./demo.ts');
      await demo(options, io);
    });
}
