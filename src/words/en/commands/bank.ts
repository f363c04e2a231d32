import { files, mistakes, questions, skills, topics } from './counted.ts';

export const bank = {
  help: {
    summary: 'question banks',
    description: 'What authors of question banks need.',
    check: {
      summary: 'tell every mistake',
      description:
        'Reads question banks and tells every mistake: where it is, what is wrong and what would be right.',
      path: 'files and folders, read as one bank (default: the banks that come with the program)',
      note: 'Exit code 0 without mistakes, 2 with. docs/writing-a-bank.md says how to write one.',
    },
  },
  noStandardInput: {
    wrong: 'A bank is a file that is named after its topic, so it can not come from standard input.',
    right: 'Name files, or folders that hold them.',
  },
  noMistakes: (counts: { topics: number; skills: number; questions: number }) =>
    `${topics(counts.topics)}, ${skills(counts.skills)}, ${questions(counts.questions)}: no mistakes.`,
  mistakes: (counts: { mistakes: number; files: number }) =>
    `${mistakes(counts.mistakes)} in ${files(counts.files)}.`,
};
