/** What a set says of its class. */
import { speech } from '../../speech.ts';
import { parts } from '../parts.ts';

/** To two places; what rounds to nothing has no sign. */
const figure = (value: number | null): string =>
  value === null ? '–' : (Math.round(100 * value) / 100 || 0).toFixed(2);

interface Shown {
  readonly times: number;
  readonly names: readonly string[];
}

/** In how many answers, and whose, an idea showed. */
export function shownIn({ times, names }: Shown): string {
  const learners = speech.plural(names.length, { one: '1 learner', other: `${names.length} learners` });
  const answers = speech.plural(times, { one: '1 answer', other: `${times} answers` });
  return `${learners}, ${answers}: ${names.join(', ')}`;
}

export const report = {
  marking: 'Marking and reckoning…',
  report: 'Report',
  handedIn: ({ handedIn, learners }: { handedIn: number; learners: number }) =>
    `${handedIn} of ${learners} handed in`,
  waiting: (papers: number) =>
    speech.plural(papers, {
      one: '1 paper is still to be marked; it is not in these figures.',
      other: `${papers} papers are still to be marked; they are not in these figures.`,
    }),
  allWaiting: 'What was handed in is still to be marked.',
  nobody: 'Nobody handed anything in.',
  nobodyYet: 'Nobody has handed anything in yet.',
  lookAfter: {
    title: 'Whom to look after',
    /** Whom, and why to speak to them. */
    why: '{name}: {concerns}.',
    concerns: (concerns: readonly string[]) => concerns.join('; '),
    absent: '{names}: handed in nothing.',
    names: (names: readonly string[]) => names.join(', '),
    concern: {
      nothingHandedIn: 'handed in nothing',
      halfLeftOut: ({ answered, items }: { answered: number; items: number }) =>
        `answered only ${answered} of ${items} items`,
      lowMarks: (part: number) => `${parts.share(part)} of the marks`,
      firmIdea: ({ times, idea }: { times: number; idea: string }) =>
        `one wrong idea ${times} times: ${idea}`,
    },
  },
  skills: {
    caption: 'Skills by learners',
    all: 'All',
    mean: 'Mean of those who handed in',
    /** Why there are no figures of somebody. */
    stands: {
      marked: '{name} ',
      waiting: '{name} <so>waiting to be marked</so>',
      open: '{name} <so>still open</so>',
      nothing: '{name} <so>nothing handed in</so>',
    },
  },
  ideas: {
    title: 'Commonest wrong ideas',
    none: 'No answer was explained by one wrong idea alone.',
    shownIn,
    example: 'An example for the board',
    answered: 'This was answered:',
    given: ({ label, given }: { label: string; given: string }) => `${label}: ${given}`,
  },
  places: {
    caption: 'What each place told',
    place: 'Place',
    skill: 'Skill',
    facility: 'Facility',
    discrimination: 'Discrimination',
    upperLower: 'Best less weakest',
    leftOut: 'Left out',
    figure,
    tellsLittle: (value: number) => `${figure(value)} <of>tells little</of>`,
    notes: {
      facility:
        'Facility: the mean mark as a share of the full one. Near 1 everybody can do it, near 0 nobody.',
      discrimination:
        'Discrimination: how marks here go with marks on the rest of the paper. Near or below 0 the place tells nothing of who can do it.',
      upperLower: 'Best less weakest: the mean share in the best 27 % less that in the weakest 27 %.',
      alpha: (alpha: number | null) =>
        `Cronbach’s alpha over the places is ${figure(alpha)}: how far they measure one thing. Below some 30 learners none of these figures says much.`,
    },
  },
};
