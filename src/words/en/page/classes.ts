/** What a tutor reads of classes, and the administrator of people. */
import { joining } from './classes/joining.ts';
import { links } from './classes/links.ts';
import { list } from './classes/list.ts';
import { members } from './classes/members.ts';
import { one } from './classes/one.ts';
import { people } from './classes/people.ts';
import { roster } from './classes/roster.ts';

/** Said in several places. */
const common = {
  oneMoment: 'One moment…',
  tryAgain: 'Try again',
  fetching: 'Fetching…',
  leaveIt: 'Leave it',
  making: 'Making them…',
  find: 'Find',
  filesKept: 'The file is among your downloads.',
  slipsKept: 'The slips are among your downloads.',
  makeSlips: 'Make the slips (PDF)',
  /** Of a name that a spreadsheet would run. */
  formulaName:
    'No word may begin with = + - or @: spreadsheets would run it. Begin with a letter or a digit.',
  person: 'Name',
  changeName: 'Change the name',
  nameChanged: 'The name is changed.',
  signsIn: 'Signs in',
  byLink: 'by link, no password yet',
  since: 'Since',
  lookAfter: 'Look after',
  lookAfterOf: (name: string) => `Look after ${name}`,
  close: 'Close',
  closeOf: (name: string) => `Close ${name}`,
  newLink: 'A new link…',
  makeLink: 'Make a link',
  signOutEverywhere: 'Sign out everywhere',
  signOutEverywhereAsk: 'Sign out everywhere…',
};

/** How files are called that are saved: after the name of the class or the person, in small letters without accents. */
const files = {
  links: 'links.pdf',
  slips: 'slips.pdf',
  table: 'class.csv',
  oneRoster: 'oneroster.zip',
  evidence: 'evidence.pdf',
  everything: 'export.json',
};

export const classes = { common, files, list, one, joining, links, members, people, roster };

export type ClassesWords = typeof classes;
