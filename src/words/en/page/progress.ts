import { comingBack } from '../coming-back.ts';
import { speech } from '../speech.ts';

export const progress = {
  title: 'Progress',
  underWay: 'Working out how you stand…',
  /** How each skill stands. */
  skills: {
    nothingYet: 'Nothing yet. <practise>Answer the first question.</practise>',
    caption: 'What you hold now',
    skill: 'Skill',
    stands: 'Stands',
    chance: 'Marks, if asked now',
    comesBack: 'Comes back',
    comingBack: { ...comingBack, minutes: () => 'within the hour' },
    notProven: 'too early to say',
    notBegun: (count: number) =>
      speech.plural(count, { one: '1 skill not begun', other: `${count} skills not begun` }),
    standing: {
      held: 'held',
      fading: 'fading',
      begun: 'begun',
      open: 'can be begun',
      shut: 'opens later',
    },
    withStanding: ({ title, standing }: { title: string; standing: string }) => `${title} (${standing})`,
  },
  ideas: {
    title: 'Ideas to be rid of',
    idea: ({ idea, advice, times }: { idea: string; advice: string; times: number }) =>
      `${idea} ${advice} (${speech.plural(times, { one: 'once', other: `${times} times` })})`,
  },
  history: {
    title: 'History',
    day: ({ day, right, all }: { day: string; right: number; all: number }) =>
      `${day}: ${right} of ${all} right`,
  },
  /** What the learner sets, and what follows from it. */
  plan: {
    title: 'Towards the assessment',
    assessmentOn: 'Assessment on',
    minutes: 'Minutes a day',
    newSkills: 'New skills a day',
    newSkillsNote: (usual: number) =>
      `At most so many skills are begun in a day; left empty it is ${usual}. With 0 only what you have begun comes back.`,
    notYet: 'Set a date and the minutes you have, and the days until then are planned.',
    allReady: (share: string) =>
      `Everything will be ready: about ${share} of the marks to be expected on the day.`,
    expected: (share: string) =>
      `As it has gone so far, about ${share} of the marks are to be expected on the day.`,
    notReady: 'These will not be ready:',
    weak: ({ title, share }: { title: string; share: string }) => `${title}: about ${share}`,
    noTime: (title: string) => `${title}: no time to begin it`,
    more: (count: number) => speech.plural(count, { one: 'and one more', other: `and ${count} more` }),
    today: (questions: number) =>
      speech.plural(questions, { one: 'Today: 1 question', other: `Today: ${questions} questions` }),
    onDay: ({ day, questions }: { day: string; questions: number }) =>
      `${day}: ${speech.plural(questions, { one: '1 question', other: `${questions} questions` })}`,
  },
  /** What is kept about the learner: to take along, and to erase. */
  own: {
    title: 'What is kept about you',
    kept: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer, each with its circuit and mark, and what you have set here: on this device, and on the server that this page comes from.',
        other: `${answers} answers, each with its circuit and mark, and what you have set here: on this device, and on the server that this page comes from.`,
      }),
    notSent: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer of them not sent yet: a download has them once they have been.',
        other: `${answers} answers of them not sent yet: a download has them once they have been.`,
      }),
    offline: 'Without network it can be neither downloaded nor erased.',
    download: 'Download it',
    downloadName: 'polewise-export.json',
    erase: 'Erase it…',
    sure: {
      gone: (answers: number) =>
        speech.plural(answers, {
          one: "<strong>This can't be undone.</strong> Gone are 1 answer with their circuits and marks, what follows from them (how each skill stands and when it comes back), a placement, the date and what else you have set: from the server and from this device.",
          other: `<strong>This can't be undone.</strong> Gone are ${answers} answers with their circuits and marks, what follows from them (how each skill stands and when it comes back), a placement, the date and what else you have set: from the server and from this device.`,
        }),
      homework:
        'What this device keeps of your homework goes as well, once all of it has been sent. Your account, your classes, and your homework papers on the server stay. An administrator can erase those.',
      copies:
        'Copies stay that somebody made: backups of the server, and files you have downloaded. Another device that still has the answers sends them again when it is next opened: erase there too.',
      erase: 'Erase everything',
      erasing: 'Erasing…',
      keep: 'Keep everything',
    },
  },
  /** Why the server has not erased what it keeps. */
  nothingErased: {
    silent: 'Nothing was erased: the server cannot be reached. Erase again as soon as there is a network.',
    refused: ({ message, hint }: { message: string; hint: string }) =>
      `Nothing was erased: ${message} ${hint}`,
    another: 'Nothing was erased: what answered was not the server. Erase again on another network.',
  },
};

export type ProgressWords = typeof progress;
