/** Files that are read and written. */
export const files = {
  standardInput: 'standard input',
  wanted: 'Give the path of a file, or - for standard input.',
  noFile: (file: string) => `There is no file ${file}.`,
  isAFolder: {
    wrong: (file: string) => `${file} is a folder.`,
    right: 'Give the path of a file in it.',
  },
  mayNotBeRead: {
    wrong: (file: string) => `${file} can't be read.`,
    right: 'Check who may read it.',
  },
  tooLarge: {
    wrong: ({ file, megabytes }: { file: string; megabytes: number }) =>
      `${file} is larger than ${megabytes} MB.`,
    right: 'Give a file of text.',
  },
  notUtf8: {
    wrong: ({ file, line, column }: { file: string; line: number; column: number }) =>
      `${file}:${line}:${column}: a character here is not UTF-8.`,
    right: {
      'UTF-16': 'It looks like UTF-16. Save it as UTF-8; a spreadsheet calls that CSV UTF-8.',
      otherEncoding: 'It may be from an older program. Save it as UTF-8; a spreadsheet calls that CSV UTF-8.',
      noText: 'It is no text. Give a file of text, in UTF-8.',
    },
  },
  mayNotBeWritten: {
    wrong: ({ file, why }: { file: string; why: string }) => `${file} can't be written (${why}).`,
    right: 'Give a path in a folder that is there and that you may write to.',
    rightHere: 'Name a file in a folder that is there.',
  },
  written: (file: string) => `Written: ${file}`,
  noPdf: {
    wrong: (file: string) => `${file} is no name of a PDF.`,
    right: (example: string) => `Name it such as ${example}.`,
  },
};
