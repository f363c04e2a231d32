import type { Command } from 'commander';
import { helpAfter } from '../help.ts';
import type { Io } from '../io.ts';
import type { DemoOptions } from './demo.ts';

export function addDemo(program: Command, io: Io): void {
  program
    .command('demo')
    .summary('a made-up class with three weeks of work, to look at')
    .description(
      'Makes up a class of fitters at a flour line with three weeks of practice and homework, and serves it, so that every screen and report can be looked at.',
    )
    .option('--data <folder>', 'where the made-up class is kept', 'demo-data')
    .option('--port <number>', 'the port; 0 takes any that is free', '8024')
    .option('--fresh', 'make it anew, up to today')
    .option('--no-serve', 'make it and end')
    .addHelpText('after', helpAfter(io, ['polewise demo', 'polewise demo --port 9000']))
    .action(async (options: DemoOptions) => {
      const { demo } = await import('./demo.ts');
      await demo(options, io);
    });
}
