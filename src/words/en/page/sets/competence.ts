/** Who holds which skill, and whose refresher is due. */

import { speech } from '../../speech.ts';
import { moments } from '../moments.ts';

const { day } = moments;

export const competence = {
  title: 'Who can do what',
  means:
    '<strong>Held</strong>: proven and, by the memory model, not forgotten; with the day. A skill is proven by answers that of a hundred people who guess not one would ever give. <strong>Fading</strong>: proven, and a refresher is due. From homework, and from questions of practice that were issued to the learner; what else was practised proves nothing. It shows that somebody read drawings rightly on those days; it is no authorisation to work on a panel.',
  proofs: 'Proofs that count',
  anyProof: 'Homework and issued practice',
  supervisedOnly: 'Only what was sat under supervision',
  byPeople: 'Skills by people',
  byPeopleOn: (at: number) => `Skills by people, on ${day(at)}`,
  person: 'Person',
  cells: { held: 'held', fading: 'fading', begun: 'begun', notYet: 'not yet' },
  evidence: 'Evidence',
  evidenceOf: (name: string) => `Evidence of ${name}, PDF`,
  evidenceBusy: 'Being made…',
  evidenceFile: 'evidence.pdf',
  refreshers: {
    title: 'Refreshers due',
    within: 'Within',
    days: (count: number) => speech.plural(count, { one: '1 day', other: `${count} days` }),
    none: 'None.',
    skills: ({ skills, overdue }: { skills: number; overdue: number }) => {
      const due = speech.plural(skills, { one: '1 skill', other: `${skills} skills` });
      return overdue > 0 ? `${due}<overdue>, ${overdue} overdue</overdue>` : due;
    },
    firstOverdue: (at: number) => `overdue <since>since ${day(at)}</since>`,
    firstOn: (at: number) => `first on <day>${day(at)}</day>`,
    since: (at: number) => `since ${day(at)}`,
  },
};
