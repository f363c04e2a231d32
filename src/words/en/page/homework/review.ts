/** A learner's own marked paper. */
import { parts } from '../parts.ts';

export const review = {
  earned: ({ earned, outOf }: { earned: number; outOf: number }) => `${earned} of ${outOf} marks`,
  answered: ({ answered, items }: { answered: number; items: number }) => `${answered} of ${items} answered`,
  notHandedIn: 'Not handed in; what was saved counts',
  ideas: 'Ideas to be rid of',
  /** An idea with its advice, and the items in which it showed. */
  idea: '{idea} {advice} ({items})',
  betweenItems: ', ',
  item: (number: number) => `item ${number}`,
  revise: 'What to revise',
  nothing: 'Nothing stands out. Practice brings everything back in time.',
  skill: ({ title, part }: { title: string; part: number }) => `${title} (${parts.share(part)} of the marks)`,
  practiseIt: 'practise it',
  read: (topic: string) => `read ${topic}`,
};
