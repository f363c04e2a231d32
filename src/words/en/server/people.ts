/** Why people are refused: who they are, and what they want to do with people and classes. */
import { speech } from '../speech.ts';

const LONG_PHRASE =
  'Several words that nobody would put together make a good one: they need no capitals, digits or signs.';
const UNCONFIRMED = 'Erasing was not confirmed.';

/** How long somebody waits; rounded up, so that nobody comes too early. */
const inAWhile = (seconds: number): string =>
  seconds > 90
    ? `Try again in ${speech.number(Math.ceil(seconds / 60))} minutes.`
    : `Try again in ${seconds} seconds.`;

export const people = {
  'sign-in-first': { wrong: 'Nobody has signed in.', right: 'Sign in, then ask again.' },
  'not-yours': ({ role }: { role: keyof typeof roles }) => ({
    wrong: 'This is for others.',
    right: `It takes the role ${roles[role]}.`,
  }),
  'sign-in-refused': {
    wrong: 'The name or the password is wrong.',
    right: 'Try again; when the password is forgotten, ask your tutor for a link.',
  },
  'link-refused': {
    wrong: 'This link no longer works, or never did.',
    right: 'A link works once, for seven days, until another one is made. Ask your tutor for a new one.',
  },
  'code-refused': {
    wrong: 'No class can be joined with this code.',
    right: 'Look at the slip again, or ask your tutor whether the class may still be joined.',
  },
  'first-run-refused': {
    wrong: 'The key is wrong, or there is an administrator already.',
    right: 'The server prints the key when it starts, until there is an administrator.',
  },
  'name-taken': { wrong: 'Somebody else signs in with this name.', right: 'Choose another one.' },
  'name-alike': {
    wrong: 'Somebody in this class has a name that looks the same.',
    right: 'Add an initial or a second name, so that both can be told apart.',
  },
  'last-admin': {
    wrong: 'There would be no administrator left.',
    right: 'Make somebody else an administrator first.',
  },
  'class-full': { wrong: 'The class would have more than 1,000 learners.', right: 'Make another class.' },
  'bad-value.noSignIn': {
    wrong: 'There is no name for signing in yet.',
    right: 'Send signIn with the password: small letters and digits, two at least.',
  },
  'too-many-tries': ({ seconds }: { seconds: number }) => ({
    wrong: 'There were too many tries.',
    right: inAWhile(seconds),
  }),
  'too-many-tries.signingIn': ({ seconds }: { seconds: number }) => ({
    wrong: 'There were too many tries.',
    right: `${inAWhile(seconds)} A device on which you have signed in before, or a link of your tutor’s, lets you in meanwhile.`,
  }),
  'weak-password.repeated': { wrong: 'The password is one thing over and over.', right: LONG_PHRASE },
  'weak-password.common': {
    wrong: 'This is one of the passwords that are tried first.',
    right: LONG_PHRASE,
  },
  'weak-password.signIn': {
    wrong: 'The password is the name for signing in, or little more.',
    right: LONG_PHRASE,
  },
  'weak-password.program': {
    wrong: 'The password is the name of this program, or little more.',
    right: LONG_PHRASE,
  },
  'not-confirmed.learner': ({ learner }: { learner: string }) => ({
    wrong: UNCONFIRMED,
    right: `Everything would be gone for good. Name the learner once more: ?confirm=${learner}`,
  }),
  'not-confirmed.person': ({ id }: { id: string }) => ({
    wrong: UNCONFIRMED,
    right: `The person and everything kept of them would be gone for good. Name them once more: ?confirm=${id}`,
  }),
  'not-confirmed.class': ({ id }: { id: string }) => ({
    wrong: UNCONFIRMED,
    right: `The class and its homework would be gone for good. Name it once more: ?confirm=${id}`,
  }),
};

/** What somebody may do, as the interface calls it. */
const roles = { nobody: 'nobody', learner: 'learner', tutor: 'tutor', admin: 'admin' };
