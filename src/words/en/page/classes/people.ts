/** Everybody of the installation, for who looks after it. */
export const people = {
  back: 'Classes',
  title: 'People',
  everybody: 'Everybody',
  partOfName: 'Part of a name',
  nobody: 'Nobody of that name.',
  range: ({ from, to, total }: { from: number; to: number; total: number }) => `${from} to ${to} of ${total}`,
  role: 'Role',
  roles: { learner: 'Learner', tutor: 'Tutor', admin: 'Administrator' },
  rolesMean: {
    learner: 'Learner: practises and does homework',
    tutor: 'Tutor: has classes of their own',
    admin: 'Administrator: sees all classes and people',
  },
  before: 'Before',
  more: 'More',
  somebodyNew: 'Somebody new',
  makeLink: 'Make a link to hand over',
  everything: 'All that is kept (file)',
  thisIsYou: 'This is you: your own role, link and erasing are another administrator’s to change.',
  newLinkMeans: (name: string) =>
    `When it is used, ${name} is signed out elsewhere and chooses a password anew. A link made before no longer works.`,
  anotherRole: 'Another role…',
  changeRole: 'Change the role',
  changeRoleMeans: (name: string) => `${name} is signed out everywhere and signs in again.`,
  sessionsEnded: (count: number) => `Sessions ended: ${count}.`,
  signOutMeans: (name: string) =>
    `For a lost device. ${name} signs in again with the password or a new link.`,
  erase: {
    ask: 'Erase this person…',
    sure: 'Erase for good',
    means:
      '<strong>This can’t be undone.</strong> Gone are the name, the sign-in, all answers, papers and marks of {name}. Let them download what is theirs first, or save it here.',
    type: (name: string) => `Type ${name}`,
    typeAsAbove: 'Type the name as it stands above, so that it is certain who is meant.',
  },
};
