/** A paper that is worked on. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';
import { type Left, left } from './common.ts';

const { when } = moments;

const list = (numbers: readonly number[]): string => speech.and(numbers.map(String));

export const paper = {
  fetching: 'Fetching your paper…',
  allMine: 'All my homework',
  overview: {
    closes: (at: number) => `Closes ${when(at)}`,
    count: (items: number) => `${items} items`,
    firstWords:
      'Every answer is saved as you give it. Go through the items in any order; nothing is marked before you hand in. What is saved when the set closes counts, handed in or not.',
    items: 'Items',
    number: 'No.',
    drawing: 'Drawing',
    asked: 'Asked',
    marks: 'Marks',
    answered: 'Answered',
    answeredSo: { all: 'answered', part: 'in part', none: 'not yet' },
    refused: 'These answers did not count:',
    refusedItem: ({ number, message }: { number: number; message: string }) => `Item ${number}: ${message}`,
  },
  strip: {
    items: 'Items',
    item: {
      all: (number: number) => `Item ${number}, answered`,
      part: (number: number) => `Item ${number}, answered in part`,
      none: (number: number) => `Item ${number}, not answered`,
    },
  },
  item: {
    answer: 'Answer',
    hint: 'Hint (it is noted that you asked)',
    lookOver: 'Look over',
  },
  /** Whether it is saved, and what time is left. */
  keeping: {
    saved: 'Saved.',
    saving: 'Saving…',
    notKept: (why: string) =>
      `Not kept yet. ${why} It is tried again by itself: leave the page open until it says Saved.`,
    refused: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer was not saved: the overview says why.',
        other: `${answers} answers were not saved: the overview says why.`,
      }),
    waits: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer kept on this device, waiting for the network.',
        other: `${answers} answers kept on this device, waiting for the network.`,
      }),
    signedOut: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer kept on this device. Sign in again to send them.',
        other: `${answers} answers kept on this device. Sign in again to send them.`,
      }),
    /** And how it stands with the others. */
    thrownAway: ({ answers, others }: { answers: number; others: string }) => {
      const gone = speech.plural(answers, {
        one: 'This browser has thrown away 1 answer kept here and not yet sent: look the paper over.',
        other: `This browser has thrown away ${answers} answers kept here and not yet sent: look the paper over.`,
      });
      return `${gone} ${others}`;
    },
    closed: (closesAt: number) => `Closed<until> · closes ${when(closesAt)}</until>`,
    left: ({ time, closesAt }: { time: Left; closesAt: number }) =>
      `${left(time)} left<until> · closes ${when(closesAt)}</until>`,
  },
  handingIn: {
    title: 'Handing in',
    all: 'Every item is answered.',
    none: 'No item is answered yet.',
    without: (numbers: readonly number[]) =>
      speech.plural(numbers.length, {
        one: `Not answered: item ${list(numbers)}.`,
        other: `Not answered: items ${list(numbers)}.`,
      }),
    inPart: (numbers: readonly number[]) =>
      speech.plural(numbers.length, {
        one: `Answered in part: item ${list(numbers)}. What is answered of it counts.`,
        other: `Answered in part: items ${list(numbers)}. What is answered of them counts.`,
      }),
    handIn: 'Hand in',
    now: 'Hand in now, for good',
    busy: 'Handing in…',
    goOn: 'Go on working',
    noNetwork:
      'There is no network just now. Your answers are kept on this device; hand in when it is back. What has arrived by the closing time counts either way.',
    signedOut: 'You are no longer signed in. Sign in again, then hand in.',
  },
  over: {
    closed: 'Closed',
    closedOn: (at: number) => `The set closed on ${when(at)}. What was saved by then counts.`,
    handedIn: 'Handed in',
    handedInOn: (at: number) => `Handed in on ${when(at)}. Nothing can be changed any more.`,
    seeMarks: 'See the marks',
    later: 'When it may be looked through, your homework says so.',
  },
};
