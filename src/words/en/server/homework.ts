/** Why something is refused that was to be done with homework. */
import { speech } from '../speech.ts';

const SAVED_COUNTS = 'What was saved before counts.';
const YOURS_NOT_KEPT =
  'Yours are not kept. Look at what was given, and give yours again if they should hold all the same.';

const total = ({ earned, of }: { earned: number; of: number }): string =>
  speech.plural(of, { one: `${earned} of ${of} mark`, other: `${earned} of ${of} marks` });

export const homework = {
  // Sets.
  'bad-set.noTopic': ({ topic }: { topic: string }) => ({
    wrong: `There is no topic ${topic}.`,
    right: 'Choose a topic of the question banks.',
  }),
  'bad-set.noCircuits': ({ topic }: { topic: string }) => ({
    wrong: `No circuits can be made for the topic ${topic}.`,
    right: 'Choose another topic, or skills by name.',
  }),
  'bad-set.closedAlready': {
    wrong: 'The closing time of the set is past.',
    right: 'Give the draft a later closing time.',
  },
  'bad-set.closesEarlier': {
    wrong: 'That is earlier than the closing time that learners were told.',
    right: 'Give a later one.',
  },
  'already-issued': {
    wrong: 'The set has been issued.',
    right: 'Withdraw it and make another one; papers that were begun would no longer fit.',
  },
  'not-issued': { wrong: 'The set is not issued.', right: 'Issue it first.' },
  withdrawn: { wrong: 'The set was withdrawn.', right: 'Ask your tutor; what you did is kept.' },
  'not-open': { wrong: 'The set has not opened yet.', right: 'Come back at its opening time.' },
  closed: { wrong: 'The set has closed.', right: 'What was saved before closing time counts.' },
  'closed.forGood': {
    wrong: 'The set has closed, and learners may have looked at their marks.',
    right: 'Make another set; marks of single papers can be changed with a reason.',
  },
  'bad-value.noZone': ({ zone }: { zone: string }) => ({
    wrong: `There is no time zone ${zone}.`,
    right: 'For example Europe/Berlin, or UTC.',
  }),

  // Papers to work on.
  'no-attempts-left': ({ attempts }: { attempts: number }) => ({
    wrong: 'All attempts have been handed in.',
    right: `The set allows ${attempts}.`,
  }),
  submitted: { wrong: 'The paper has been handed in.', right: SAVED_COUNTS },
  'no-such-thing.leftClass': {
    wrong: 'You are no longer in the class of this paper.',
    right: 'Ask its tutor; what you saved before is kept.',
  },
  'bad-value.tooManySaves': ({ most }: { most: number }) => ({
    wrong: `More than ${most} answers have been saved on this paper.`,
    right: 'Hand it in: what was saved counts.',
  }),
  'no-hints': { wrong: 'The set allows no hints.', right: 'They were ruled out by its tutor.' },

  // Papers to print.
  'not-prepared.nobody': { wrong: 'The class has no learners.', right: 'Add learners first.' },
  'not-prepared': ({ missing, of }: { missing: number; of: number }) => ({
    wrong: `${missing} of ${of} papers have not been made yet.`,
    right: 'Have the papers made first.',
  }),

  // Marked papers.
  'not-handed-in': {
    wrong: 'Nothing has been handed in.',
    right: 'A paper is marked when it is submitted, or when the set closes with answers saved.',
  },
  'no-review.never': {
    wrong: 'This paper is looked through with your tutor.',
    right: 'Hand it in first.',
  },
  'no-review.beforeClosing': {
    wrong: 'The paper may not be looked through yet.',
    right: 'Come back when the set has closed.',
  },
  'no-review.beforeHandIn': {
    wrong: 'The paper may not be looked through yet.',
    right: 'Hand it in first.',
  },
  'no-review.nothing': { wrong: 'Nothing was handed in.', right: 'There is nothing to look through.' },
  'bad-mark.count': ({ marks, items }: { marks: number; items: number }) => ({
    wrong: `There are ${marks} marks and the paper has ${items} items.`,
    right: 'Give one for each item, in order; leave empty what was left out.',
  }),
  'marked-meanwhile': ({
    by,
    item,
    reason,
    ...marks
  }: {
    by: string;
    item: number;
    earned: number;
    of: number;
    reason: string;
  }) => ({
    wrong: `${by} has given item ${item} ${total(marks)}: “${reason}” since you looked.`,
    right: YOURS_NOT_KEPT,
  }),
  /** Nothing stands there any more of who did. */
  'marked-meanwhile.bySomebody': ({ item }: { item: number }) => ({
    wrong: `Somebody has given item ${item} other marks since you looked.`,
    right: YOURS_NOT_KEPT,
  }),
  'no-such-code': ({ code }: { code: string }) => ({
    wrong: `No paper of this set has the code ${code}.`,
    right: 'Look at the code on the paper, and whether it is of this set.',
  }),
};
