import { MOST_ADDED } from '../../../../shared/api-people.ts';
import { beginsFormula, newName } from '../../../../shared/new-names.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { readGiven } from '../../files.ts';
import { type Io, UsageError } from '../../io.ts';
import { withStore } from '../../store-place.ts';
import { classNamed, personNamed } from './find.ts';
import { linkText } from './link-text.ts';
import type { AddressOption, DataOption } from './options.ts';

export interface AddOptions extends DataOption, AddressOption {
  readonly from?: string;
}
export interface TutorOptions extends DataOption, AddressOption {
  readonly new?: string;
}

const nameIn = (given: string, { name: said }: CommandWords['class']): string => {
  const read = newName.safeParse(given);
  if (read.success) return read.data;
  throw new UsageError(said.wrong(given), beginsFormula(given, true) ? said.formula : said.right);
};

/** The names given, and those in a file, one on each line. */
async function namesIn(
  io: Io,
  given: readonly string[],
  file: string | undefined,
): Promise<readonly string[]> {
  const { class: said } = io.words;
  const lines = file === undefined ? [] : (await readGiven(io, file)).split(/\r?\n/);
  const names = [...given, ...lines.filter((text) => text.trim() !== '')].map((name) => nameIn(name, said));
  if (names.length === 0) throw new UsageError(said.nobodyNamed.wrong, said.nobodyNamed.right);
  if (names.length > MOST_ADDED)
    throw new UsageError(said.tooManyNames.wrong(names.length), said.tooManyNames.right(MOST_ADDED));
  return names;
}

/** Makes learners in a class, each with a link that lets in. */
export const addLearners = (
  name: string,
  names: readonly string[],
  options: AddOptions,
  io: Io,
): Promise<void> =>
  withStore(io, options.data, async (store) => {
    const { class: said } = io.words;
    const { id } = await classNamed(store, name, io.words);
    const added = await store.people.joining.byNames(id, await namesIn(io, names, options.from));
    if (added === null || typeof added === 'string') throw new UsageError(said.full.wrong, said.full.right);
    for (const { person, link } of added)
      io.out(said.linkOf({ name: person.name, link: linkText(options, link, io.words) }));
  });

/** Makes a link that lets somebody in once. */
export const makeLink = (name: string, options: DataOption & AddressOption, io: Io): Promise<void> =>
  withStore(io, options.data, async (store) => {
    const { id, name: called } = await personNamed(store, name, io.words);
    const link = linkText(options, await store.people.links.make(id), io.words);
    io.out(io.words.class.linkOf({ name: called, link }));
  });

/** Makes somebody tutor of a class, who is there or new. */
export const makeTutor = (
  of: string,
  who: string | undefined,
  options: TutorOptions,
  io: Io,
): Promise<void> =>
  withStore(io, options.data, async (store) => {
    const { class: said } = io.words;
    const { persons, classes, links } = store.people;
    if ((who === undefined) === (options.new === undefined))
      throw new UsageError(said.eitherThereOrNew.wrong, said.eitherThereOrNew.right);
    const { id, title } = await classNamed(store, of, io.words);
    if (options.new !== undefined) {
      const person = (await persons.make({ name: nameIn(options.new, said), role: 'tutor' }))!;
      await classes.addTutor(id, person.id);
      const link = linkText(options, await links.make(person.id), io.words);
      io.out(said.linkOf({ name: person.name, link }));
      return;
    }
    const person = await personNamed(store, who!, io.words);
    if (person.role === 'learner') await persons.changeRole(person.id, 'tutor');
    await classes.addTutor(id, person.id);
    io.out(said.isTutor({ name: person.name, title }));
  });
