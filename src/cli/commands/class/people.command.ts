import type { Command } from 'commander';
import { commandIn, helpAfter } from '../../help.ts';
import type { Io } from '../../io.ts';
import { type AddressOption, addressOption, type DataOption, dataOption } from './options.ts';
import type { AddOptions, TutorOptions } from './people.ts';

/** Learners by name, tutors, and links for whoever has to get in. */
export function addPeople(group: Command, io: Io): void {
  const {
    class: { help },
    given,
    values,
  } = io.words;
  commandIn(group, 'add', help.add)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .argument(`[${values.names}...]`, help.add.names)
    .option(`--from <${values.file}>`, help.add.from)
    .option(...addressOption(io.words))
    .option(...dataOption(io.words))
    .addHelpText('after', helpAfter(io, ['polewise class add "Flour line" "Mika F." "Ann O."']))
    .action(async (name: string, names: readonly string[], options: AddOptions) => {
      const { addLearners } = await import('./people.ts');
      await addLearners(name, names, options, io);
    });

  commandIn(group, 'link', help.link)
    .argument(`<${values.person}>`, given.arguments.person)
    .option(...addressOption(io.words))
    .option(...dataOption(io.words))
    .addHelpText(
      'after',
      helpAfter(io, ['polewise class link ada --address https://practice.example'], help.link.note),
    )
    .action(async (name: string, options: DataOption & AddressOption) => {
      const { makeLink } = await import('./people.ts');
      await makeLink(name, options, io);
    });

  commandIn(group, 'tutor', help.tutor)
    .argument(`<${values.class}>`, given.arguments.classOfPeople)
    .argument(`[${values.person}]`, help.tutor.person)
    .option(`--new <${values.name}>`, help.tutor.new)
    .option(...addressOption(io.words))
    .option(...dataOption(io.words))
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
