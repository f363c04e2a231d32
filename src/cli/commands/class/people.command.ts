import type { Command } from 'commander';
import { helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { ADDRESS_OPTION, type AddressOption, DATA_OPTION, type DataOption } from './options.ts';
import type { AddOptions, TutorOptions } from './people.ts';

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
    .action(async (name: string, names: readonly string[], options: AddOptions) => {
      const { addLearners } = await import('./people.ts');
      await addLearners(name, names, options, io);
    });

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
    .action(async (name: string, options: DataOption & AddressOption) => {
      const { makeLink } = await import('./people.ts');
      await makeLink(name, options, io);
    });

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
    .action(async (of: string, who: string | undefined, options: TutorOptions) => {
      const { makeTutor } = await import('./people.ts');
      await makeTutor(of, who, options, io);
    });
}
