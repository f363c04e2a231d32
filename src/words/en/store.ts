/** What becomes of a store, and what is found in it. */
import { type StatementOf, say } from '../statement.ts';
import { type FormSaid, forms } from './forms.ts';

/** What goes wrong with a store although the program is right: what it is, and what helps. */
const failures = {
  wrong: {
    noStore: 'There is no store here.',
    notAStore: 'The file is not a database.',
    fromLater: 'The store was last used by a later version of this program.',
    unreachable: 'The store cannot be reached.',
    full: 'There is no room left on the disk.',
    busy: 'Another program is using the store.',
    readOnly: 'The store may not be written.',
    damaged: 'The store is damaged.',
    copyDamaged: ({ found }: { found: string }) => `The copy is damaged: ${found}.`,
    fileExists: ({ file }: { file: string }) => `There is a file ${file} already.`,
    noSuchFolder: ({ folder }: { folder: string }) => `There is no folder ${folder}.`,
    ownTools: 'A PostgreSQL store is backed up with its own tools.',
  },
  right: {
    noStore:
      'Check --data, POLEWISE_DATA and DATABASE_URL. polewise serve, drill and class new begin a store; nothing else does.',
    notAStore: 'Name the file that this program made, or another place for a new one.',
    fromLater: 'Use that version, or put back a backup from before.',
    unreachable: 'Check the data folder, or that the database runs and DATABASE_URL is right.',
    full: 'Make room; what was kept is unharmed, and what was refused can be sent again.',
    busy: 'Try again in a moment.',
    readOnly: 'Check who owns the data folder, or what the database user may do.',
    damaged: 'Stop, copy the data folder aside, and put the newest backup back (docs/backup.md).',
    copyDamaged: 'Check the disk, and the store itself with `polewise rebuild --check`.',
    fileExists: 'Name one that is not there yet.',
    noSuchFolder: 'Name a file in one that is there.',
    ownTools: 'Use pg_dump --format=custom with the same address (docs/backup.md).',
  },
};

/** Why an answer that is kept can't be read. */
const unreadable = {
  fromLater: ({ form, known }: { form: number; known: number }) =>
    `It was written by a later version (form ${form}, known ${known}).`,
  noJson: 'Its text is not JSON, or not of the form it is said to have.',
  notOfForm: ({ form }: { form: FormSaid }) => say(forms, form),
};

/** What isn't as it should be. */
const faults = {
  answerMissing: ({ missing, next }: { missing: number; next: number }) =>
    `Answer ${missing} is missing; after it comes ${next}.`,
  answerUnreadable: (answer: { number: number; id: string; why: StatementOf<typeof unreadable> }) =>
    `Answer ${answer.number} (${answer.id}) can't be read. ${say(unreadable, answer.why)}`,
  anothersRecord: ({ number, id }: { number: number; id: string }) =>
    `Answer ${number} (${id}) holds another answer's record.`,
  otherCount: ({ answers, last }: { answers: number; last: number }) =>
    `There should be ${answers} answers and the last one is ${last}.`,
  attemptUnreadable: ({ number, id }: { number: number; id: string }) =>
    `What the memory needs of answer ${number} (${id}) can't be read; its share counts.`,
  otherRecall: ({ skill }: { skill: string }) =>
    `The recall state of ${skill} isn't the one that the answers lead to; rebuilding mends that.`,
  noSuchPerson:
    'Something of them is kept and there is no such person; polewise learner erase takes it away.',
  noHistory: 'Something of them is kept and they have no history.',
  /** As the database says it. */
  database: ({ found }: { found: string }) => found,
};

/** Why somebody on a roster was passed over. */
const passedOver = {
  signInTaken: ({ name, signIn }: { name: string; signIn: string }) =>
    `${name}: somebody signs in as ${signIn} already; let them join by the code.`,
  tutor: ({ name }: { name: string }) => `${name}: tutors are brought in by an administrator.`,
  isLearner: ({ name }: { name: string }) =>
    `${name}: is a learner; an administrator can change the role first.`,
  looksLike: ({ name, other }: { name: string; other: string }) =>
    `${name}: looks like ${other}, who is in the class; write it as it is there, or add an initial.`,
  signInBegun: ({ name, signIn }: { name: string; signIn: string }) =>
    `${name}: somebody has begun to sign in as ${signIn} at this very moment.`,
};

export const store = { failures, faults, passedOver, unreadable };

export type StoreWords = typeof store;
