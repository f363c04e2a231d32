import { MOST_ADDED } from '../../../../shared/api-people.ts';
import { beginsFormula, NO_FORMULA, newName } from '../../../../shared/new-names.ts';
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

const nameIn = (given: string): string => {
  const read = newName.safeParse(given);
  if (read.success) return read.data;
  throw new UsageError(
    `${given} can't be a name.`,
    beginsFormula(given, true) ? `A name ${NO_FORMULA}.` : 'One line, 1 to 80 letters.',
  );
};

/** The names given, and those in a file, one on each line. */
async function namesIn(
  io: Io,
  given: readonly string[],
  file: string | undefined,
): Promise<readonly string[]> {
  const lines = file === undefined ? [] : (await readGiven(io, file)).split(/\r?\n/);
  const names = [...given, ...lines.filter((text) => text.trim() !== '')].map(nameIn);
  if (names.length === 0) throw new UsageError('Nobody is named.', 'Name learners, or a file with --from.');
  if (names.length > MOST_ADDED)
    throw new UsageError(`These are ${names.length} names.`, `At most ${MOST_ADDED} go at once.`);
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
    const { id } = await classNamed(store, name);
    const added = await store.people.joining.byNames(id, await namesIn(io, names, options.from));
    if (added === null || typeof added === 'string')
      throw new UsageError('The class would be too full.', 'A class has 1,000 learners at most.');
    for (const { person, link } of added) io.out(`${person.name}: ${linkText(options, link)}`);
  });

/** Makes a link that lets somebody in once. */
export const makeLink = (name: string, options: DataOption & AddressOption, io: Io): Promise<void> =>
  withStore(io, options.data, async (store) => {
    const { id, name: called } = await personNamed(store, name);
    io.out(`${called}: ${linkText(options, await store.people.links.make(id))}`);
  });

/** Makes somebody tutor of a class, who is there or new. */
export const makeTutor = (
  of: string,
  who: string | undefined,
  options: TutorOptions,
  io: Io,
): Promise<void> =>
  withStore(io, options.data, async (store) => {
    const { persons, classes, links } = store.people;
    if ((who === undefined) === (options.new === undefined))
      throw new UsageError(
        'Name either somebody who is there, or somebody new with --new.',
        'polewise class tutor --help has examples.',
      );
    const { id, title } = await classNamed(store, of);
    if (options.new !== undefined) {
      const person = (await persons.make({ name: nameIn(options.new), role: 'tutor' }))!;
      await classes.addTutor(id, person.id);
      io.out(`${person.name}: ${linkText(options, await links.make(person.id))}`);
      return;
    }
    const person = await personNamed(store, who!);
    if (person.role === 'learner') await persons.changeRole(person.id, 'tutor');
    await classes.addTutor(id, person.id);
    io.out(`${person.name} is tutor of ${title}.`);
  });
