/** What stands on paper beside questions: papers of homework, their key, slips, evidence. */
import { speech } from './speech.ts';

/** How much a wrong part costs; `of` so many choices, where not all things asked have as many. */
interface Cost {
  readonly cost: string;
  readonly of?: number;
}

const papers = {
  title: ({ set, className }: { set: string; className: string }): string => `${set}: ${className}`,
  how: 'Tick one square for each thing asked. What is left out costs nothing; a wrong tick costs what guessing would gain on average. Write with ink.',
  strangeName:
    'The name has letters that cannot be printed here: write it in by hand. The code says whose paper this is.',
  homework: 'Homework',
  code: 'Code',
  name: 'Name',
  className: 'Class',
  closes: 'Closes',
  attempt: 'Attempt',
  marksEarned: 'Marks earned',
  earned: 'earned',
  ofMarks: (marks: number): string => `of ${marks}`,
  foot: ({ code, page }: { code: string; page: string }): string => `${code}, page ${page}`,
  entry: ({ name, code }: { name: string; code: string }): string => `${name}, ${code}`,
  marks: (marks: number): string => speech.plural(marks, { one: '1 mark', other: `${marks} marks` }),
};

/** Places to answer with a pen. */
const space = {
  numberOfChoice: 'Number of the choice',
  orFromTo: (from: string): string => `or   ${from} to`,
  and: 'and',
  toEnd: (to: string): string => `to ${to}`,
  reading: (label: string): string => `${label}:`,
  nothing: 'nothing',
};

const key = {
  title: ({ set, className }: { set: string; className: string }): string =>
    `Answer key. ${set}: ${className}`,
  head: 'Answer key, not for learners',
  foot: (page: string): string => `Answer key, page ${page}`,
  nameless: '(see the code)',
  rule: 'Parts left out earn and cost nothing; an item never earns less than 0; a mark is rounded to a hundredth. Parts in brackets count as the same answer.',
  worth: ({ marks, each }: { marks: number; each: string }): string => `of ${marks}: ${each}`,
  withNote: ({ answer, note }: { answer: string; note: string }): string => `${answer}  (${note})`,
  allOrNothing: 'all or nothing',
  each: ({ right, costs }: { right: string; costs: readonly Cost[] }): string =>
    `each right +${right}, wrong −${costs.map(({ cost, of }) => (of === undefined ? cost : `${cost} of ${of}`)).join(' or ')}`,
  standing: ({ item, state }: { item: string; state: string }): string => `${item} ${state}`,
  step: ({ after, list }: { after: number; list: string }): string =>
    after === 0 ? `start: ${list}` : `after ${after}: ${list}`,
  choice: (number: number): string => `choice ${number}`,
  orZero: 'or 0 V',
  within: (near: number): string => `within ${near} V`,
  withinOrNothing: (near: number): string => `within ${near} V, or nothing`,
};

const slips = {
  title: (className: string): string => `Joining slips: ${className}`,
  for: (name: string): string => `for ${name}`,
  code: 'Code',
  byCode: (address: string): readonly string[] => [
    `Open ${address} in a browser, on a phone or a computer.`,
    'Say that you want to join a class, and type the code below.',
    'Choose a name to be seen by, a sign-in name and a password.',
  ],
  byLink: (address: string): readonly string[] => [
    'Scan the square, or type the link below. It works once, and only for you.',
    'Choose a password, so that you can come in again.',
    `From then on: ${address}`,
  ],
};

const evidence = {
  title: ({ name, madeAt }: { name: string; madeAt: string }): string => `Evidence: ${name}, ${madeAt}`,
  head: 'Evidence of skills in reading control drawings',
  organisation: 'Organisation',
  made: 'Made',
  foot: ({ madeAt, page }: { madeAt: string; page: string }): string => `${madeAt}, page ${page}`,
  states: { held: 'held', fading: 'fading', 'not-yet': 'not yet' },
  /** Where a proof comes from. */
  sources: {
    issued: 'practice, question issued to the learner',
    homework: 'homework',
    supervised: 'homework under supervision',
  },
  /** Which proofs were asked for. */
  wanted: {
    any: 'It counts what was issued to this learner and answered in its time: homework, and questions of practice. What else was practised is the learner’s own and proves nothing. Beside each drawing stands where the proof comes from.',
    supervised: 'It counts only homework that was sat under supervision, by the word of its tutor.',
  },
  means: [
    'Held: proven, and by the model of memory not forgotten since. Proven: answered so, on different drawings and without help, that of a hundred people who guess not one would ever get there. Fading: proven once, and now less than 90 % likely to be answered rightly; a refresher is due. Not yet: not proven, or lost since.',
    'It shows that somebody read these drawings rightly on those days. It does not show that somebody can work safely on a panel, and is no authorisation to.',
    'Who sat at the device is known only where somebody was watching. The drawings are made by a program, and the right answers are worked out by its solver.',
  ],
  skill: 'Skill',
  state: 'State',
  proven: 'Proven',
  on: 'On',
  refresherDue: 'Refresher due',
  begun: 'begun',
  notBegun: 'not begun',
  /** They are numbered one after the other. */
  onDrawings: (numbers: readonly number[]): string =>
    numbers.length === 1 ? `drawing ${numbers[0]}` : `drawings ${numbers[0]} to ${numbers.at(-1)}`,
  onCircuits: (circuits: readonly string[]): string =>
    circuits.length === 1 ? `circuit ${circuits[0]}` : `circuits ${circuits.join(', ')}`,
  asked: 'Asked',
  answered: 'Answered',
  right: 'Right',
  leftOut: 'left out',
  drawing: ({ number, title }: { number: number; title: string }): string => `Drawing ${number}: ${title}`,
  notGiven: 'This drawing is not among the answers that were given for this print.',
  dated: ({ day, circuit }: { day: string; circuit: string }): string => `${day}   circuit ${circuit}`,
  share: ({ percent, hint }: { percent: number; hint: boolean }): string =>
    hint ? `${percent} % right, after the hint` : `${percent} % right`,
  shareFrom: ({ share, source }: { share: string; source: string }): string => `${share}; ${source}`,
};

export const paper = {
  safety:
    'This teaches reading drawings. It is no instruction to work on live equipment. Where measuring or isolating is touched: isolate, lock off, prove dead with a proved tester, mind supplies from elsewhere that stay live, follow local codes and licensed practice.',
  page: 'Page',
  pageOf: ({ page, of }: { page: number; of: number }): string => `${page} of ${of}`,
  caution: (caution: string): string => `Caution: ${caution}`,
  sheet: (sheet: number): string => `Sheet ${sheet}`,
  sheetTitled: ({ sheet, title }: { sheet: number; title: string }): string => `Sheet ${sheet}: ${title}`,
  papers,
  space,
  key,
  slips,
  evidence,
};
