import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import type { CodeOptions, NewOptions } from './classes.ts';
import { type DataOption, dataOption } from './options.ts';

/** Makes one. */
function addNew(group: Command, io: Io): void {
  const {
    class: { help },
    values,
  } = io.words;
  commandIn(group, 'new', help.new)
    .argument(`<${values.title}>`, help.new.title)
    .option(`--intake <${values.name}>`, help.new.intake)
    .option(`--tutor <${values.person}>`, help.new.tutor)
    .option(...dataOption(io.words))
    .addHelpText(
      'after',
      helpAfter(io, ['polewise class new "Flour line" --intake "Autumn 2026" --tutor tilda']),
    )
    .action(async (title: string, options: NewOptions) => {
      const { makeClass } = await import('./classes.ts');
      await makeClass(title, options, io);
    });
}

/** Says which there are. */
function addList(group: Command, io: Io): void {
  const {
    class: { help },
  } = io.words;
  commandIn(group, 'list', help.list)
    .option(...dataOption(io.words))
    .addHelpText('after', helpAfter(io, ['polewise class list']))
    .action(async (options: DataOption) => {
      const { listClasses } = await import('./classes.ts');
      await listClasses(options, io);
    });
}

/** Says who is in one. */
function addShow(group: Command, io: Io): void {
  const {
    class: { help },
    given,
    values,
  } = io.words;
  commandIn(group, 'show', help.show)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .option(...dataOption(io.words))
    .addHelpText('after', helpAfter(io, ['polewise class show "Flour line"']))
    .action(async (name: string, options: DataOption) => {
      const { showClass } = await import('./classes.ts');
      await showClass(name, options, io);
    });
}

/** Says, changes, opens or closes its joining code. */
function addCode(group: Command, io: Io): void {
  const {
    class: { help },
    given,
    values,
  } = io.words;
  commandIn(group, 'code', help.code)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .option('--fresh', help.code.fresh)
    .option('--close', help.code.close)
    .option('--open', help.code.open)
    .option(...dataOption(io.words))
    .addHelpText(
      'after',
      helpAfter(io, ['polewise class code "Flour line"', 'polewise class code "Flour line" --fresh']),
    )
    .action(async (name: string, options: CodeOptions) => {
      const { changeCode } = await import('./classes.ts');
      await changeCode(name, options, io);
    });
}

/** Making classes, looking at them, and their codes. */
export function addClasses(group: Command, io: Io): void {
  addNew(group, io);
  addList(group, io);
  addShow(group, io);
  addCode(group, io);
}
