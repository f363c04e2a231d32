import { speech } from '../speech.ts';

export const account = {
  /** What is said of whoever is signed in. */
  person: {
    role: 'Role',
    roles: { learner: 'Learner', tutor: 'Tutor', admin: 'Administrator' },
    signsInAs: 'Signs in as',
    byLinkOnly: 'by a link only, so far',
    classes: 'Classes',
    noClass: 'none',
    classesOf: (titles: readonly string[]) => titles.join('; '),
    asTutor: (title: string) => `${title} (tutor)`,
    seeAlso: 'See also',
    join: 'Join a class with a code',
    keptAboutYou: 'What is kept about you',
    ownProgress: 'Your own progress',
    write: 'Write a circuit in the notation',
  },
  leave: {
    title: 'Sign out here',
    allSent: 'Everything has been sent. Sign out where others use this device too.',
    notSent: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer has not been sent yet. They stay on this device, nobody else sees them, and they are sent when you next sign in here.',
        other: `${answers} answers have not been sent yet. They stay on this device, nobody else sees them, and they are sent when you next sign in here.`,
      }),
    signOut: 'Sign out',
    signingOut: 'Signing out…',
  },
  password: {
    another: 'Another password',
    anotherNote: 'With a new password you are signed out everywhere but here.',
    choose: 'Choose a password',
    chooseNote: 'You came by a link. With a password you sign in on any device.',
    set: 'Set the password',
    isSet: 'The password is set.',
  },
  /** Where somebody is signed in. */
  sessions: {
    title: 'Where you are signed in',
    device: 'Device',
    since: 'Since',
    lastUsed: 'Last used',
    endIt: 'End it',
    hereNow: 'here, now',
    signOut: 'Sign out',
    signOutOf: ({ device, since }: { device: string; since: string }) =>
      `Sign out: ${device}, since ${since}`,
    signedOut: (device: string) => `Signed out: ${device}.`,
    signedOutIn: (places: number) =>
      speech.plural(places, {
        one: 'Signed out in 1 place.',
        other: `Signed out in ${places} places.`,
      }),
    others: 'Sign out everywhere else',
    fetching: 'Fetching…',
  },
};

export type AccountWords = typeof account;
