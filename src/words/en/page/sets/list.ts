/** The sets of a class. */
import { speech } from '../../speech.ts';

export const list = {
  caption: 'Sets, the newest first',
  set: 'Set',
  stands: 'Stands',
  items: 'Items',
  marks: 'Marks',
  handedIn: 'Handed in',
  handedInOf: ({ handedIn, learners }: { handedIn: number; learners: number }) =>
    `${handedIn} of ${learners}`,
  notIssued: '–',
  learners: (count: number) => speech.plural(count, { one: '1 learner', other: `${count} learners` }),
  class: 'Class',
  newSet: 'New set',
  none: 'No sets yet. A new one takes two minutes.',
  noClass: 'There is no class yet. <classes>Make one first</classes>, then set it homework.',
  myOwn: 'My own homework',
};
