import type { Command } from 'commander';
import { classTitle, intake as intakeSchema } from '../../../../shared/people.ts';
import { counted } from '../../counted.ts';
import { type Io, UsageError } from '../../io.ts';
import { withNewStore, withStore } from '../../store-place.ts';
import { classNamed, personNamed } from './find.ts';
import { type DataOption, withData } from './options.ts';

interface NewOptions extends DataOption {
  readonly intake?: string;
  readonly tutor?: string;
}
interface CodeOptions extends DataOption {
  readonly fresh?: boolean;
  readonly close?: boolean;
  readonly open?: boolean;
}

const textFor = (schema: typeof classTitle, what: string, given: string): string => {
  const read = schema.safeParse(given);
  if (read.success) return read.data;
  throw new UsageError(`${what} can't be ${given || 'empty'}.`, 'One line, and not too long.');
};

/** Making classes, looking at them, and their codes. */
export function addClasses(group: Command, io: Io): void {
  withData(group.command('new'))
    .description('Makes a class, with a code by which learners join it.')
    .argument('<title>', 'what it is called')
    .option('--intake <name>', 'which group of newcomers it is')
    .option('--tutor <person>', 'whose class it is: id, name for signing in, or name')
    .addHelpText(
      'after',
      '\nExample:\n  polewise class new "Flour line" --intake "Autumn 2026" --tutor tilda',
    )
    .action((given: string, { data, intake, tutor }: NewOptions) =>
      withNewStore(io, data, async (store) => {
        const title = textFor(classTitle, 'A title', given);
        const group = intake === undefined ? null : textFor(intakeSchema, 'An intake', intake);
        const person = tutor === undefined ? null : await personNamed(store, tutor);
        if (person?.role === 'learner')
          throw new UsageError(`${person.name} is a learner.`, 'polewise class tutor makes a tutor.');
        const made = await store.people.classes.make(title, group, person?.id ?? null);
        io.out(`${made.title} (${made.id}): learners join with the code ${made.joiningCode}.`);
      }),
    );

  withData(group.command('list'))
    .description('Names all classes.')
    .action(({ data }: DataOption) =>
      withStore(io, data, async (store) => {
        const classes = await store.people.classes.list(null);
        for (const { id, title, intake, learners, endedAt } of classes) {
          const more = [counted(learners, 'learner'), intake, endedAt === null ? null : 'ended'];
          io.out(`${title} (${id}): ${more.filter((text) => text !== null).join(', ')}`);
        }
        if (classes.length === 0) io.out('There is no class yet: polewise class new "Flour line".');
      }),
    );

  withData(group.command('show'))
    .description('Shows who is in a class.')
    .argument('<class>', 'title or id')
    .action((name: string, { data }: DataOption) =>
      withStore(io, data, async (store) => {
        const { title, id, joiningCode, joiningOpen, endedAt, members } = await classNamed(store, name);
        const open = joiningOpen && endedAt === null;
        io.out(`${title} (${id}): code ${joiningCode}, ${open ? 'may be joined' : 'may not be joined'}.`);
        for (const one of members) {
          const more = [one.manner === 'tutor' ? 'tutor' : null, one.signIn ?? 'has not come in yet'];
          io.out(`  ${one.name} (${one.id}): ${more.filter((text) => text !== null).join(', ')}`);
        }
        if (members.length === 0) io.out('  Nobody is in it yet.');
      }),
    );

  withData(group.command('code'))
    .description('Shows the joining code of a class, or changes it.')
    .argument('<class>', 'title or id')
    .option('--fresh', 'another code; the one so far no longer works')
    .option('--close', 'nobody may join from now on')
    .option('--open', 'may be joined again')
    .action((name: string, { data, fresh, close, open }: CodeOptions) =>
      withStore(io, data, async (store) => {
        if (close && open) throw new UsageError('--open and --close contradict each other.');
        const { classes } = store.people;
        const { id } = await classNamed(store, name);
        if (fresh) await classes.newCode(id);
        if (close || open) await classes.change(id, { joiningOpen: open === true });
        const detail = (await classes.get(id))!;
        io.out(`${detail.joiningCode}${detail.joiningOpen ? '' : ' (may not be joined)'}`);
      }),
    );
}
