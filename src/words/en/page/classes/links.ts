/** Links to be handed over. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';

export const links = {
  printed:
    'The slips are among your downloads, with a name and a link each. The links that stood here no longer work: those on the slips do.',
  title: (count: number) =>
    speech.plural(count, { one: 'A link to hand over', other: `${count} links to hand over` }),
  means: (until: number) =>
    `Each works once, until ${moments.day(until)}, and lets in whoever opens it: give it to nobody else. It is shown only now; another one can be made at any time.`,
  name: 'Name',
  link: 'Link',
  copyIt: 'Copy it',
  linkOf: (name: string) => `the link of ${name}`,
  print: 'Print slips instead (PDF)',
  namesAndLinks: 'names and links',
  copyAll: 'Copy all',
};
