import { papers } from './counted.ts';

/** Papers made and printed, and the marks of those that were written on paper. */
export const homeworkPapers = {
  help: {
    papers: {
      summary: 'make papers, and print them',
      description:
        'Makes the papers that are missing, and writes all of them as one PDF to print, and the answer key as another.',
      out: 'where the papers go, such as papers.pdf',
      key: 'where the answers go, such as key.pdf',
      note: 'Each paper has a name and a code; marks are typed in by the code with polewise homework mark.',
    },
    mark: {
      summary: 'type in the marks of papers that were written on paper',
      description:
        'Takes marks by the code of the paper: one line in the command, a file of lines, or typed one after another.',
      code: 'the code on the paper',
      marks: 'a mark for each item in order; - for one that was left out',
      from: 'lines of code and marks; - reads standard input',
      note: 'Marks typed again stand beside the earlier ones, and the latest hold.',
    },
  },
  stopped: ({ made, of }: { made: number; of: number }) =>
    `Stopped; ${made} of ${papers(of)} are made. Run it again for the others.`,
  allMade: (count: number) => `All ${count} papers are made.`,
  noMark: {
    wrong: (word: string) => `${word}: no mark.`,
    right: 'Give a number such as 2 or 1.5, or - for an item left out.',
  },
  earned: ({ name, earned, outOf }: { name: string; earned: number; outOf: number }) =>
    `${name}: ${earned} of ${outOf}`,
  howToType: 'Type a code and its marks, - for an item left out. An empty line ends.',
  prompt: 'code and marks: ',
  taken: (count: number) => `The marks of ${papers(count)} are taken.`,
};
