export const backup = {
  help: {
    summary: 'copy everything that is kept into one file',
    description: 'Copies the store into one new file, also while the server or a drill is using it.',
    file: 'the file to make; it must not be there yet',
    note: 'To put a backup back: stop the server, and copy the file over practice.sqlite in the data folder (docs/backup.md).',
  },
  ownTools: 'A PostgreSQL store is backed up with its own tools.',
  noRoom: {
    wrong: (file: string) => `There is no room for ${file}.`,
    right: 'Make room, or name a file on another disk. The store itself is unharmed.',
  },
  mayNotBeWritten: 'Name a file in a folder that you may write to.',
  stopped: {
    wrong: 'The copying was stopped.',
    right: 'Nothing of it is left; the store is as it was.',
  },
  done: (file: string) => `Everything is in ${file}.`,
};
