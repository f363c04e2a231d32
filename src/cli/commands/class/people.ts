import type { Command } from 'commander';
import { MOST_ADDED } from '../../../../shared/api-people.ts';
import { beginsFormula, NO_FORMULA, newName } from '../../../../shared/new-names.ts';
import { readGiven } from '../../files.ts';
import { helpAfter } from '../../help.ts';
import { type Io, UsageError } from '../../io.ts';
import { withStore } from '../../store-place.ts';
import { classNamed, personNamed } from './find.ts';
import { ADDRESS_OPTION, type AddressOption, DATA_OPTION, type DataOption, linkText } from './options.ts';

interface AddOptions extends DataOption, AddressOption {
  readonly from?: string;
}
interface TutorOptions extends DataOption, AddressOption {
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

/** Learners by name, tutors, and links for whoever has to get in. */
export function addPeople(group: Command, io: Io): void {
  group
    .command('add')
    .summary('make learners, with a link for each')
    .description('Makes learners in a class, each with a link that lets in once, within seven days.')
    .argument('<class>', 'title, words of it, or id')
    .argument('[names...]', 'what they are called')
    .option('--from <file>', 'a file with a name on each line; - reads standard input')
    .option(...ADDRESS_OPTION)
    .option(...DATA_OPTION)
    .addHelpText('after', helpAfter(io, ['polewise class add "Flour line" "Mika F." "Ann O."']))
    .action((name: string, names: readonly string[], options: AddOptions) =>
      withStore(io, options.data, async (store) => {
        const { id } = await classNamed(store, name);
        const added = await store.people.joining.byNames(id, await namesIn(io, names, options.from));
        if (added === null || typeof added === 'string')
          throw new UsageError('The class would be too full.', 'A class has 1,000 learners at most.');
        for (const { person, link } of added) io.out(`${person.name}: ${linkText(options, link)}`);
      }),
    );

  group
    .command('link')
    .summary('make a link that lets somebody in')
    .description('Makes a link that lets somebody in once; password and sessions so far end when it is used.')
    .argument('<person>', 'id, name for signing in, or name')
    .option(...ADDRESS_OPTION)
    .option(...DATA_OPTION)
    .addHelpText(
      'after',
      helpAfter(
        io,
        ['polewise class link ada --address https://practice.example'],
        'Also the way back in for an administrator who has forgotten the password.',
      ),
    )
    .action((name: string, options: DataOption & AddressOption) =>
      withStore(io, options.data, async (store) => {
        const { id, name: called } = await personNamed(store, name);
        io.out(`${called}: ${linkText(options, await store.people.links.make(id))}`);
      }),
    );

  group
    .command('tutor')
    .summary('make somebody tutor of a class')
    .description('Makes somebody tutor of a class.')
    .argument('<class>', 'title, words of it, or id')
    .argument('[person]', 'who: id, name for signing in, or name')
    .option('--new <name>', 'somebody who isn’t there yet, with a link to hand over')
    .option(...ADDRESS_OPTION)
    .option(...DATA_OPTION)
    .addHelpText(
      'after',
      helpAfter(io, [
        'polewise class tutor "Flour line" tilda',
        'polewise class tutor "Flour line" --new "Tilda T."',
      ]),
    )
    .action((of: string, who: string | undefined, options: TutorOptions) =>
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
      }),
    );
}
