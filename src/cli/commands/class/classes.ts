import { beginsFormula, NO_FORMULA, newClassTitle, newIntake } from '../../../../shared/new-names.ts';
import { counted } from '../../counted.ts';
import { type Io, UsageError } from '../../io.ts';
import { withNewStore, withStore } from '../../store-place.ts';
import { classNamed, personNamed } from './find.ts';
import type { DataOption } from './options.ts';

export interface NewOptions extends DataOption {
  readonly intake?: string;
  readonly tutor?: string;
}
export interface CodeOptions extends DataOption {
  readonly fresh?: boolean;
  readonly close?: boolean;
  readonly open?: boolean;
}

const textFor = (schema: typeof newClassTitle, what: string, given: string): string => {
  const read = schema.safeParse(given);
  if (read.success) return read.data;
  throw new UsageError(
    `${what} can't be ${given || 'empty'}.`,
    beginsFormula(given) ? `${what} ${NO_FORMULA}.` : 'One line, and not too long.',
  );
};

/** Makes a class, with a code by which learners join it. */
export const makeClass = (given: string, { data, intake, tutor }: NewOptions, io: Io): Promise<void> =>
  withNewStore(io, data, async (store) => {
    const title = textFor(newClassTitle, 'A title', given);
    const group = intake === undefined ? null : textFor(newIntake, 'An intake', intake);
    const person = tutor === undefined ? null : await personNamed(store, tutor);
    if (person?.role === 'learner')
      throw new UsageError(`${person.name} is a learner.`, 'polewise class tutor makes a tutor.');
    const made = await store.people.classes.make(title, group, person?.id ?? null);
    io.out(`${made.title} (${made.id}): learners join with the code ${made.joiningCode}.`);
  });

/** Names all classes. */
export const listClasses = ({ data }: DataOption, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const classes = await store.people.classes.list(null);
    for (const { id, title, intake, learners, endedAt } of classes) {
      const more = [counted(learners, 'learner'), intake, endedAt === null ? null : 'ended'];
      io.out(`${title} (${id}): ${more.filter((text) => text !== null).join(', ')}`);
    }
    if (classes.length === 0) io.out('There is no class yet: polewise class new "Flour line".');
  });

/** Shows who is in a class. */
export const showClass = (name: string, { data }: DataOption, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { title, id, joiningCode, joiningOpen, endedAt, members } = await classNamed(store, name);
    const open = joiningOpen && endedAt === null;
    io.out(`${title} (${id}): code ${joiningCode}, ${open ? 'may be joined' : 'may not be joined'}.`);
    for (const one of members) {
      const more = [one.manner === 'tutor' ? 'tutor' : null, one.signIn ?? 'has not come in yet'];
      io.out(`  ${one.name} (${one.id}): ${more.filter((text) => text !== null).join(', ')}`);
    }
    if (members.length === 0) io.out('  Nobody is in it yet.');
  });

/** Shows the joining code of a class, or changes it. */
export const changeCode = (name: string, { data, fresh, close, open }: CodeOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    if (close && open)
      throw new UsageError('--open and --close contradict each other.', 'Leave one of them out.');
    const { classes } = store.people;
    const { id } = await classNamed(store, name);
    if (fresh) await classes.newCode(id);
    if (close || open) await classes.change(id, { joiningOpen: open === true });
    const detail = (await classes.get(id))!;
    io.out(`${detail.joiningCode}${detail.joiningOpen ? '' : ' (may not be joined)'}`);
  });
