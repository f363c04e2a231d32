/** Marks that are typed in from paper. */
import { earned as earnedMarks } from '../homework/figures.ts';

interface Whose {
  readonly name: string;
  readonly attempt: number;
  readonly hasMarks: boolean;
}

interface Kept {
  readonly code: string;
  readonly name: string;
  readonly earned: number;
  readonly outOf: number;
}

export const typed = {
  title: 'Marks from paper',
  how: 'Type the code, then the marks item by item: Enter or the space bar goes on, an empty place was left out, Enter at the last one keeps the paper and begins the next.',
  code: 'Code on the paper',
  noPaper: 'No paper of this set has this code so far.',
  whose: ({ name, attempt, hasMarks }: Whose) => {
    const who = attempt > 1 ? `${name}, attempt ${attempt}` : name;
    return hasMarks ? `${who} (has marks already; these replace them)` : who;
  },
  /** Over the field of an item. */
  cell: ({ number, outOf }: { number: number; outOf: number }) => `${number} <of>of ${outOf}</of>`,
  marksFor: ({ number, outOf }: { number: number; outOf: number }) =>
    `Marks for item ${number}, of ${outOf}; empty where it was left out`,
  wrong: ({ number, outOf, typed: text }: { number: number; outOf: number; typed: string }) =>
    `Item ${number} has marks from 0 to ${outOf}. Correct ${text}.`,
  keep: 'Keep, and the next paper',
  keptNow: 'Kept just now',
  kept: ({ code, name, earned, outOf }: Kept) => `${code}, ${name}: ${earnedMarks(earned)} of ${outOf} marks`,
};
