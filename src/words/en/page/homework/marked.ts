/** Marked papers, as learners and tutors look them through. */
import { moments } from '../moments.ts';
import { earned as earnedMarks, marks as marksOf } from './figures.ts';

const { day } = moments;

interface Earned {
  readonly earned: number;
  readonly outOf: number;
}

const earnedText = ({ earned, outOf }: Earned): string => `${earnedMarks(earned)} of ${marksOf(outOf)}`;

export const marked = {
  items: 'Items',
  number: 'No.',
  drawing: 'Drawing',
  answered: 'Answered',
  right: 'Right',
  marks: 'Marks',
  answeredSo: { all: 'yes', part: 'in part', none: 'no' },
  /** An item whose circuit has no title. */
  item: (number: number) => `Item ${number}`,
  rightOf: ({ right, count }: { right: number; count: number }) => `${right} of ${count}`,
  /** In a column of marks. */
  marksOf: ({ earned, outOf }: Earned) => `${earnedMarks(earned)} of ${outOf}`,
  marksByTutor: ({ earned, outOf }: Earned) =>
    `${earnedMarks(earned)} of ${outOf}<said> (marked by the tutor)</said><seen> *</seen>`,
  earned: earnedText,
  verdict: {
    notAnswered: (marks: Earned) => `Not answered. ${earnedText(marks)}.`,
    right: (marks: Earned) => `Right. ${earnedText(marks)}.`,
    notAllRight: (marks: Earned) => `Not all right. ${earnedText(marks)}.`,
    hint: 'The hint was asked for.',
    byTutor: ({ at, earned, reason }: { at: number; earned: number; reason: string }) =>
      `Marked by the tutor on ${day(at)} with ${earnedMarks(earned)}: ${reason}`,
  },
  untitled: 'A circuit',
  why: 'Why',
  bySkill: 'By skill',
  skill: 'Skill',
  share: 'Share',
  shares: {
    percent: (part: number) => `${Math.round(100 * part)}`,
    none: '–',
    nothingHandedIn: 'nothing handed in',
    legend:
      'Numbers are per cent of the marks. <firm> from 90,</firm> <fair> from 75,</fair> <weak> from 50,</weak> <low> below 50; – nothing.</low>',
  },
};
