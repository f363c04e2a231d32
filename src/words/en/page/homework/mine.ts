/** A learner's homework as a list. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';
import { type Left, left } from './common.ts';
import { items, marks } from './figures.ts';

const { when } = moments;

interface About {
  readonly classTitle: string;
  readonly items: number;
  readonly marks: number;
  readonly help: 'none' | 'hints';
  readonly attempts: number;
}

interface Attempt {
  /** Undefined where there is one at most. */
  readonly number: number | undefined;
  readonly submittedAt: number | null;
  readonly closed: boolean;
  readonly total: { readonly earned: number; readonly outOf: number } | null;
}

const help = { none: 'no hints', hints: 'hints may be asked for' };

function attemptStands({ number, submittedAt, closed }: Attempt): string {
  if (submittedAt !== null)
    return number === undefined
      ? `Handed in ${when(submittedAt)}`
      : `Attempt ${number}: handed in ${when(submittedAt)}`;
  if (closed)
    return number === undefined
      ? 'Not handed in; what was saved counts'
      : `Attempt ${number}: not handed in; what was saved counts`;
  return number === undefined ? 'Begun' : `Attempt ${number}: begun`;
}

export const mine = {
  groups: { open: 'Open', before: 'Coming', closed: 'Closed' },
  nothingOpen: 'Nothing is open.',
  allHandedIn: 'Everything that is open is handed in.',
  toHandIn: (sets: number) =>
    speech.plural(sets, { one: '1 set to hand in', other: `${sets} sets to hand in` }),
  asItStood:
    'There is no network: this is how it stood last. A paper that was begun on this device can be gone on with.',
  none: 'No homework has been set for you.',
  about: (set: About) => {
    const attempts = speech.plural(set.attempts, { one: 'one attempt', other: `${set.attempts} attempts` });
    return `${set.classTitle}: ${items(set.items)}, ${marks(set.marks)}, ${help[set.help]}, ${attempts}`;
  },
  opens: ({ opensAt, closesAt }: { opensAt: number; closesAt: number }) =>
    `Opens ${when(opensAt)}, closes ${when(closesAt)}.`,
  openUntil: ({ closesAt, time }: { closesAt: number; time: Left }) =>
    `Open until <strong>${when(closesAt)}</strong> (${left(time)} left).`,
  closed: (at: number) => `Closed ${when(at)}.`,
  attempt: (attempt: Attempt) =>
    attempt.total
      ? `${attemptStands(attempt)}, ${attempt.total.earned} of ${marks(attempt.total.outOf)}.`
      : `${attemptStands(attempt)}.`,
  lookThrough: 'Look through',
  withTutor: 'Your tutor goes through it with you.',
  beingMarked: 'It is being marked.',
  marksFrom: (at: number) => `Marks and answers from ${when(at)}.`,
  nothingHandedIn: 'Nothing handed in.',
  answered: ({ answered, count }: { answered: number; count: number }) =>
    `${answered} of ${count} items have answers.`,
  goOn: 'Go on',
  begin: 'Begin',
  beginAnother: 'Begin another attempt',
  beginning: 'Drawing your paper…',
};
