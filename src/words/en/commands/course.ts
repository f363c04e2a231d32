/** Question banks that are read. */
export const course = {
  ownMissing: {
    wrong: 'The question banks that come with polewise are missing.',
    right: 'Install it again, or name a folder with --banks.',
  },
  noFolder: {
    wrong: (folder: string) => `There is no folder ${folder}.`,
    right: 'Give the folder that holds the Markdown files of the banks.',
  },
  wanted: 'Name Markdown files, or a folder that holds them.',
  allMistakes: 'polewise bank check tells all mistakes of the banks.',
  noBank: {
    wrong: (folders: readonly string[]) => `There is no bank in the folder ${folders.join(', ')}`,
    right: 'Banks are Markdown files; docs/writing-a-bank.md says how to write one.',
  },
  noSkill: {
    wrong: (skill: string) => `There is no skill ${skill}.`,
    right: (skills: readonly string[]) => `Skills: ${skills.join(', ')}.`,
  },
  noTopic: (topic: string) => `There is no topic ${topic}.`,
  thereAre: 'There are:',
};
