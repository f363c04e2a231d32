/** A new set, or a draft that is made anew. */
import { speech } from '../../speech.ts';

export const form = {
  change: 'Change the draft',
  new: 'New homework set',
  title: 'Title',
  asks: 'What it asks <of>choose topics or single skills</of>',
  asksSkills: (count: number) =>
    speech.plural(count, {
      one: 'What it asks <of>1 skill</of>',
      other: `What it asks <of>${count} skills, taking turns</of>`,
    }),
  howMuch: 'How much',
  items: 'Items',
  marksEach: 'Marks for each',
  level: 'Size',
  times: 'When',
  opens: 'Opens',
  closes: 'Closes',
  how: 'How',
  attempts: 'Attempts',
  counts: 'Of several',
  help: 'Help',
  review: 'Marks and answers are shown',
  supervised: 'Sat under supervision',
  supervisedNote:
    'Tick it where somebody watches the class at work: evidence then says so of what was shown.',
  others: 'Every learner gets other circuits, equally hard. Nobody sees the set before you issue it.',
  keep: 'Keep as draft',
  keeping: 'Finding questions…',
  problems: {
    noTitle: 'Give the set a title.',
    formula: 'A title begins with a letter or digit: spreadsheets run what begins with = + - or @.',
    noSkill: 'Choose at least one skill.',
    manySkills: (most: number) => `Choose at most ${most} skills.`,
    /** Day and time as they were typed: `2026-03-29`, `02:30`. */
    leftOut: ({ day, time }: { day: string; time: string }) =>
      `There is no ${time} on ${day}: the clocks are put forward over it. Choose another time.`,
    noTimes: 'Say when the set opens and when it closes.',
    closesFirst: 'The set closes before it opens. Choose a closing time that is later.',
  },
};
