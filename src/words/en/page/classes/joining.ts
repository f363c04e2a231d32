/** The ways into a class: its code, slips with it, learners added by name. */
import { speech } from '../../speech.ts';

export const joining = {
  code: {
    title: 'Joining code',
    ended: 'The class has ended: its code lets nobody in any more.',
    address: 'the address',
    whoever: 'Whoever has the code',
    mayJoin: 'may join',
    mayNot: 'may not join now',
    newAsk: 'New code…',
    newMeans: 'The code above stops working, and so do all slips with it. Those who have joined stay.',
    newSure: 'Make a new code',
  },
  slips: {
    title: 'Slips to hand out',
    means: 'Each has the code, the address and how to join; print and cut them apart.',
    howMany: 'How many',
    range: 'From 1 to 400.',
  },
  byName: {
    ended: 'The class has ended: nobody can be added to it.',
    title: 'Add learners by name',
    names: 'Names, one on each line',
    note: 'Each gets a link of their own to sign in with, which you hand over.',
    none: 'Type a name at least.',
    tooMany: ({ most, count }: { most: number; count: number }) =>
      `At most ${most} at once; these are ${count}.`,
    formula: (name: string) =>
      `No word may begin with = + - or @: spreadsheets would run it. Begin with a letter or a digit. ${name}`,
    tooLong: (name: string) => `This is too long for a name, or not one line: ${name}`,
    thereTwice: (names: readonly string[]) =>
      `There twice: ${names.join(', ')}. That is all right for two people of one name.`,
    adding: 'Adding…',
    add: 'Add',
    addSeveral: (count: number) =>
      speech.plural(count, { one: 'Add 1 learner', other: `Add ${count} learners` }),
  },
};
