import { beginsFormula, newClassTitle, newIntake } from '../../../../shared/new-names.ts';
import type { CommandWords } from '../../../words/commands.ts';
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

const textFor = (
  schema: typeof newClassTitle,
  said: CommandWords['class']['title' | 'intake'],
  given: string,
): string => {
  const read = schema.safeParse(given);
  if (read.success) return read.data;
  throw new UsageError(
    given ? said.wrong(given) : said.empty,
    beginsFormula(given) ? said.formula : said.right,
  );
};

/** Makes a class, with a code by which learners join it. */
export const makeClass = (given: string, { data, intake, tutor }: NewOptions, io: Io): Promise<void> =>
  withNewStore(io, data, async (store) => {
    const { class: said } = io.words;
    const title = textFor(newClassTitle, said.title, given);
    const group = intake === undefined ? null : textFor(newIntake, said.intake, intake);
    const person = tutor === undefined ? null : await personNamed(store, tutor, io.words);
    if (person?.role === 'learner')
      throw new UsageError(said.isALearner.wrong(person.name), said.isALearner.right);
    const made = await store.people.classes.make(title, group, person?.id ?? null);
    io.out(said.made({ title: made.title, id: made.id, code: made.joiningCode }));
  });

/** Names all classes. */
export const listClasses = ({ data }: DataOption, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { class: said } = io.words;
    const classes = await store.people.classes.list(null);
    for (const { id, title, intake, learners, endedAt } of classes)
      io.out(said.row({ id, title, intake, learners, ended: endedAt !== null }));
    if (classes.length === 0) io.out(said.noneYet);
  });

/** Shows who is in a class. */
export const showClass = (name: string, { data }: DataOption, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { title, id, joiningCode, joiningOpen, endedAt, members } = await classNamed(store, name, io.words);
    const { class: said } = io.words;
    const open = joiningOpen && endedAt === null;
    const shown = { title, id, code: joiningCode };
    io.out(open ? said.mayBeJoined(shown) : said.mayNotBeJoined(shown));
    for (const { name: called, id: who, manner, signIn } of members)
      io.out(`  ${said.member({ name: called, id: who, tutor: manner === 'tutor', signIn })}`);
    if (members.length === 0) io.out(`  ${said.nobodyYet}`);
  });

/** Shows the joining code of a class, or changes it. */
export const changeCode = (name: string, { data, fresh, close, open }: CodeOptions, io: Io): Promise<void> =>
  withStore(io, data, async (store) => {
    const { class: said } = io.words;
    if (close && open) throw new UsageError(said.openAndClose.wrong, said.openAndClose.right);
    const { classes } = store.people;
    const { id } = await classNamed(store, name, io.words);
    if (fresh) await classes.newCode(id);
    if (close || open) await classes.change(id, { joiningOpen: open === true });
    const detail = (await classes.get(id))!;
    io.out(detail.joiningOpen ? detail.joiningCode : said.closedCode(detail.joiningCode));
  });
