export const drill = {
  help: {
    summary: 'practise in the terminal',
    description:
      'Asks question after question on fresh circuits, marks each, says why, and brings each skill back in time.',
    options: {
      count: 'how many questions',
      skill: 'only this skill',
      seed: 'the same seed asks the same questions of the same learner',
      place: 'find first where to begin, in at most eight questions',
      data: 'where answers are kept (default: the data folder that serve uses)',
    },
    note: 'At the prompt: an answer, ? for a hint, pass to see the answer, stop to end. Every answer that has been marked is kept, also when you end with Ctrl-C. With DATABASE_URL set answers are kept in that PostgreSQL database.',
  },
  placeAndSkill: {
    wrong: '--place finds where to begin among all skills.',
    right: 'Leave out --skill, or leave out --place.',
  },
  nothingAskedYet: 'Nothing was asked yet.',
  nothingMore: 'Nothing more to practise now.',
  noCircuit: (skill: string) => `No new circuit was found for ${skill}.`,
  /** Why this skill now. */
  why: {
    due: 'due for review',
    planned: 'chosen for today',
    unproven: 'once more, on another circuit',
    new: 'new',
    ahead: 'ahead of time',
  },
  /** After two lost answers in a row to one skill. */
  lesson: {
    helps: 'That went wrong twice in a row. This part of the lesson helps:',
    from: ({ lesson, section }: { lesson: string; section: string | null }) =>
      section === null ? lesson : `${lesson}: ${section}`,
    smaller: 'Next time this skill comes with a smaller circuit.',
  },
  questionOf: ({ number, of }: { number: number; of: number }) => `Question ${number} of ${of}`,
  about: ({ skill, why }: { skill: string; why: string }) => `${skill} (${why})`,
  typeAnAnswer: 'Type an answer. ? gives a hint, pass shows the answer, stop ends the practice.',
  enterForNext: 'Enter for the next question, stop to end: ',
  placing: {
    whereToBegin: ({ most }: { most: number }) =>
      `Where do you want to begin?\n  1  at the beginning\n  2  find where: ${most} questions at most, each on what tells most`,
    prompt: '1 or 2 (Enter: 1)> ',
    oneOrTwo: 'Type 1 or 2, or stop to end.',
    questionOf: ({ number, most }: { number: number; most: number }) =>
      `Finding where to begin: question ${number} of ${most} at most`,
    atTheBeginning: 'You begin at the beginning.',
    known: ({ known, of }: { known: number; of: number }) => `${known} of ${of} skills known:`,
    theyComeBack: 'They come back within days, to be shown on a circuit each.',
  },
  summary: {
    nothingAnswered: 'No question was answered. What was kept before is still there.',
    answered: (count: number) =>
      count === 1 ? '1 question answered and kept.' : `${count} questions answered and kept.`,
    wentWell: 'Went well',
    needsWork: 'Needs work',
    skill: ({ title, right, of }: { title: string; right: number; of: number }) =>
      `${title}: ${right} of ${of} right`,
    skillHeld: ({ title, right, of }: { title: string; right: number; of: number }) =>
      `${title}: ${right} of ${of} right, held`,
    ideas: 'Ideas to be rid of',
    idea: ({ idea, advice }: { idea: string; advice: string }) => `${idea} ${advice}`,
    ideaOften: ({ idea, advice, times }: { idea: string; advice: string; times: number }) =>
      `${idea} (${times} times) ${advice}`,
    comesBack: 'Comes back',
    returns: ({ title, when }: { title: string; when: string }) => `${title}: ${when}`,
    moreReturn: ({ count, last }: { count: number; last: string }) => `and ${count} more, the last ${last}`,
  },
};
