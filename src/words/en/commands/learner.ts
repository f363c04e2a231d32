import { answers } from './counted.ts';

export const learner = {
  help: {
    summary: 'what is kept about somebody',
    description: 'Shows who answers are kept of, gives out everything about one of them, or erases it.',
    list: {
      summary: 'name everyone of whom something is kept',
      description: 'Names everyone of whom something is kept, and how many answers that is.',
    },
    export: {
      summary: 'give out everything about one learner',
      description: 'Gives out everything that is kept about one learner, as JSON.',
      learner: 'who; on a machine of your own that is me',
      out: 'a new file to write it to, instead of printing it',
    },
    erase: {
      summary: 'erase everything about one learner',
      description: 'Erases everything that is kept about one learner, for good. Backups are not touched.',
      learner: 'who',
      yes: 'without asking once more',
    },
  },
  nothingOf: {
    wrong: (name: string) => `Nothing is kept of ${name}.`,
    right: 'polewise learner list names everyone.',
    rightWhereNobody: 'Nothing is kept of anybody.',
  },
  fileThere: {
    wrong: (file: string) => `There is a file ${file} already.`,
    right: 'Name a new one.',
  },
  notWritten: {
    wrong: (file: string) => `${file} can't be written.`,
    right: 'Name a file in a folder that is there.',
  },
  lastAdministrator: {
    wrong: 'That is the last administrator.',
    right: 'Make somebody else an administrator first (docs/classes.md).',
  },
  willBeGone: ({ count, name }: { count: number; name: string }) =>
    `${answers(count)} of ${name}, with all that follows from them, will be gone for good.`,
  sayYes: 'Say --yes when that is what you want.',
  typeToErase: (name: string) => `Type ${name} to erase: `,
  row: ({ name, count }: { name: string; count: number }) => `${name}: ${answers(count)}`,
  nameWithId: ({ name, id }: { name: string; id: string }) => `${name} (${id})`,
  nobodyYet: 'Nothing is kept of anybody yet.',
  exported: ({ name, file }: { name: string; file: string }) =>
    `Everything kept about ${name} is in ${file}.`,
  nothingErased: 'Nothing was erased.',
  erased: ({ name, count }: { name: string; count: number }) =>
    `Everything kept about ${name} is gone: ${answers(count)}.`,
};
