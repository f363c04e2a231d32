/** Practising, and answering wherever questions are put. */
import { speech } from '../speech.ts';

export const practise = {
  drawing: 'Drawing a circuit…',
  nextQuestion: 'Next question',
  /** After why there is nothing to ask, where none is begun because the learner has set it so. */
  noneNewIsSet: 'You have set that no new skill is begun: change it under Progress to go on.',
  question: (number: number) => `Question ${number}`,
  ownPractice: 'Your own practice: it proves nothing to others',
  /** How the drawing itself is answered on. */
  onDrawing: {
    terminals: 'Touch the two terminals on the drawing, or choose below.',
    moments: 'Choose a moment over the drawing and touch its rings, or choose below.',
    rings: 'Touch each blue ring on the drawing, or choose below.',
  },
  moment: {
    label: 'Moment that is answered on the drawing',
    start: 'Start',
    after: (acts: string) => `After ${acts}`,
  },
  answer: 'Answer',
  notKept: (why: string) =>
    `Not kept yet, so not marked. ${why} Your answer stands here as you gave it: when that is mended, check it again, and leave the page open until then.`,
  /** The controls of an answer, and how they were marked. */
  form: {
    volts: 'Volts',
    showsNothing: 'shows nothing',
    right: '<away>Right: </away>{right}',
    leftOut: 'left out',
    wrong: (given: string) => `${given} is wrong`,
    instead: (right: string) => `right: ${right}`,
  },
  /** Checking, hint, verdict, and the way on. */
  bar: {
    notKept: 'Not kept yet',
    right: 'Right.',
    notRight: 'Not right.',
    partlyRight: ({ right, of }: { right: number; of: number }) => `${right} of ${of} right.`,
    next: 'Next',
    check: 'Check',
    checkAgain: 'Check again',
    checkLeft: (left: number) => `Check (${left} left)`,
    hint: 'Hint (counts as help)',
  },
  /** The idea behind a wrong answer, and why the right one is right. */
  explained: {
    ideas: (count: number) =>
      speech.plural(count, {
        one: 'An idea that gives just this answer',
        other: 'Either of these ideas gives just this answer',
      }),
    why: 'Why',
    story: 'All that happens, in order',
    tryThis: 'Try this circuit: press, hold, measure',
  },
  /** Where somebody new begins. */
  begin: {
    label: 'Where to begin',
    atTheBeginning: 'Begin at the beginning',
    find: (most: number) => `Find where to begin <of>${most} questions at most</of>`,
    finding: ({ number, most }: { number: number; most: number }) =>
      `Finding where to begin: question ${number} of ${most} at most`,
    enough: 'Enough',
    oneSkill: 'Only this skill, until you choose otherwise',
    allSkills: 'All skills',
    noneKnown: 'You begin at the beginning',
    known: ({ known, of }: { known: number; of: number }) => `${known} of ${of} skills known`,
    countAsKnown: 'These count as known and come back within days, to be shown on a circuit each:',
    practise: 'Practise',
  },
};
