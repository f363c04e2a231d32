/** Who is in a class, and what a tutor does for one of them. */
import { speech } from '../../speech.ts';

export const members = {
  learners: (count: number) => speech.plural(count, { one: '1 learner', other: `${count} learners` }),
  nobodyYet: 'Nobody yet. <code>Hand out the joining code</code>, or <byName>add learners by name</byName>.',
  findName: 'Find a name',
  found: ({ shown, count }: { shown: number; count: number }) => `${shown} of ${count}`,
  without: (count: number) =>
    speech.plural(count, {
      one: '1 has no password yet, and need a link for any other device: <slips>print slips with links for them</slips>.',
      other: `${count} have no password yet, and need a link for any other device: <slips>print slips with links for them</slips>.`,
    }),
  tutors: (count: number) => speech.plural(count, { one: 'Tutor', other: 'Tutors' }),
  noTutor: 'Nobody.',
  takeOutTutor: 'Take out',
  takeOutTutorOf: (name: string) => `Take out ${name} as tutor`,
  anotherTutor: 'Another tutor',
  anotherTutorNote: 'Part of the name; everybody who is a tutor where it stays empty.',
  noOtherTutor: 'There is no other tutor of that name.',
  addTutor: (name: string) => `Add ${name}`,
  evidence: 'What was proven (PDF)',
  signedOut: (places: number) =>
    places === 0
      ? 'Was signed in nowhere.'
      : speech.plural(places, { one: 'Signed out in 1 place.', other: `Signed out in ${places} places.` }),
  newLinkMeans: (name: string) =>
    `For a forgotten password, or another device. When it is used, ${name} is signed out elsewhere and chooses a password anew. A link made before no longer works.`,
  signOutMeans: (name: string) =>
    `For a lost device. ${name} signs in again with the password, or with a new link; what waits on a device is kept there until then.`,
  takeOutAsk: 'Take out of the class…',
  takeOut: 'Take out',
  takeOutMeans: (name: string) =>
    `${name} no longer sees this class and its homework. The person stays, with all that was practised.`,
};
