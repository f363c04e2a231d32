import { speech } from '../speech.ts';

export const enter = {
  sheetOf: ({ sheet, of }: { sheet: number; of: number }) => `Sheet ${sheet} of ${of}`,
  next: 'Next',
  back: 'Back',
  notNow: 'Not now',
  oneMoment: 'One moment…',
  joinTheClass: 'Join the class',
  setPassword: 'Set the password',
  signIn: {
    title: 'Sign in',
    name: 'Name for signing in',
    password: 'Password',
    noName: 'Type your name for signing in.',
    noPassword: 'Type your password.',
    signIn: 'Sign in',
    newHere: 'New here, with a slip from your tutor:',
    join: 'Join a class with a code',
    otherWays: 'With a link of your own, open that link. Forgotten the password? Ask your tutor for a link.',
  },
  /** Signing in again over whatever stands there. */
  again: {
    title: 'Sign in again',
    withPassword:
      'You are no longer signed in here. What you have done stays on this device until it is sent.',
    withoutPassword:
      'You are no longer signed in here, and have no password. Ask your tutor for a link and open it on this device: what you have done here stays until then, and is sent.',
    somebodyElse: 'I am somebody else',
  },
  /** How somebody signs in from now on. */
  account: {
    title: 'How will you sign in?',
    name: 'Name for signing in',
    nameNote: 'Letters from a to z, digits, dots, _ and -. You type it each time.',
    signsInAs: (name: string) => `You sign in as ${name}.`,
    password: 'Password',
    newPassword: 'New password',
    passwordSoFar: 'Password so far',
    passwordNote: 'At least 10 letters. Three words in a row are good, and easy to keep in mind.',
    noPasswordSoFar: 'Type the password you have now.',
    anotherSoFar: 'That is not the password you have now.',
  },
  /** Somebody is in by a link, and chooses a password. */
  choose: {
    title: (name: string) => `Good day, ${name}`,
    why: 'Choose a password, and from now on you sign in with it on any device.',
    without:
      'Without one you can go on here; for another device, or once you are signed out, you need a new link.',
  },
  code: {
    title: 'Join a class',
    code: 'Joining code',
    note: 'Eight letters and digits, on the slip from your tutor. Capitals and hyphens don’t matter, nor whether it is O or 0.',
    noCode: 'It has eight letters and digits, like 4C7K-9MTX. Look at the slip again.',
    looking: 'Looking…',
    signedInBefore: 'I have signed in here before',
  },
  join: {
    nameNote: (title: string) => `The class is ${title}. Your tutor sees this name.`,
    alsoTitle: (title: string) => `Join ${title}?`,
    also: (name: string) =>
      `You are signed in as ${name}. The tutor of this class will see your name and how you practise.`,
  },
  link: {
    title: 'Come in by your link',
    what: 'Somebody has handed you a link of your own. It works once, for seven days.',
    signsOut: (name: string) =>
      `${name} is signed in here. Your link signs ${name} out on this device; what ${name} has practised stays.`,
    comeIn: 'Come in',
    leaveIt: 'Leave it',
    withPassword: 'Sign in with a password instead',
  },
  name: {
    title: 'What are you called?',
    name: 'Your name',
  },
  /** The very first visit. */
  firstRun: {
    title: 'Nobody is here yet',
    what: 'The first one in becomes the administrator: who makes tutors and classes. When the server started it printed a key, in the window or the log where it runs.',
    key: 'Key',
    keyNote: 'Capitals, hyphens and spaces don’t matter.',
    noKey: 'Type the key.',
    nameNote: 'As tutors and learners are to see it.',
    begin: 'Begin',
  },
  /** Why what was typed can't stay as it is. */
  typed: {
    noName: 'Type a name.',
    formulaName:
      'No word may begin with = + - or @: spreadsheets would run it. Begin with a letter or a digit.',
    longName: 'One line of at most 80 letters.',
    noSignIn: 'Type a name: letters from a to z, digits, dots, _ and -.',
    shortSignIn: 'At least 2 letters or digits.',
    shortPassword: (letters: number) =>
      speech.plural(letters, {
        one: 'At least 10 letters; so far 1.',
        other: 'At least 10 letters; so far #.',
      }),
    longPassword: 'At most 200 letters.',
  },
};

export type EnterWords = typeof enter;
