/** Something to send to each route that takes something, of the form that it takes. */
import type { everyRoute } from '../../shared/every-route.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { NOW } from './serving.ts';

interface Sample {
  readonly body?: object;
  readonly query?: string;
}

const password = 'nine potted ferns';
const account = { name: 'Nora New', signIn: 'nora.new', password };
const wish = {
  title: 'Week 40',
  skills: ['status-lamps', 'make-contact'],
  items: 2,
  level: 'small',
  opensAt: NOW - 3_600_000,
  closesAt: NOW + 3_600_000,
};

export const SAMPLES: Readonly<Partial<Record<keyof typeof everyRoute, Sample>>> = {
  keepAnswers: { body: { answers: [answerWith({ id: 'sample', at: MORNING })] } },
  issueQuestions: { body: { have: {} } },
  putSettings: { body: { minutesADay: 20 } },
  eraseLearner: { query: '?confirm=somebody' },
  firstRun: { body: { ...account, key: '0000' } },
  signIn: { body: { signIn: 'nora.new', password } },
  signInWithLink: { body: { token: 'no-token' } },
  lookAtCode: { body: { code: '0000-0000' } },
  join: { body: { ...account, code: '0000-0000' } },
  joinClass: { body: { code: '0000-0000' } },
  setPassword: { body: { password } },
  newClass: { body: { title: 'Ferry ramp' } },
  changeClass: { body: { title: 'Another title' } },
  eraseClass: { query: '?confirm=no' },
  addLearners: { body: { names: ['Nora New'] } },
  takeRoster: { body: { format: 'csv', text: 'name\nNora New\n' } },
  giveRoster: { query: '?format=csv' },
  linkSlips: { body: {} },
  renamePerson: { body: { name: 'Another Name' } },
  newPerson: { body: { name: 'Nora New', role: 'tutor' } },
  changeRole: { body: { role: 'admin' } },
  erasePerson: { query: '?confirm=no' },
  addTutor: { body: { person: 'nobody' } },
  closeLater: { body: { closesAt: 4_000_000_000_000 } },
  draftHomework: { body: wish },
  changeHomework: { body: wish },
  saveAnswers: {
    body: { answers: [{ id: 'one', item: 0, answer: { kind: 'lamp-states', states: {} } }] },
  },
  triedElsewhere: { body: { circuit: 'none', place: 'try-it' } },
  askHint: { body: { item: 0 } },
  overrideMark: { body: { item: 0, earned: 1, reason: 'A sample' } },
  typeMarks: { body: { code: 'no-code', marks: [1] } },
};

export const sampleFor = (name: string): Sample => SAMPLES[name as keyof typeof everyRoute] ?? {};
