/** What can be wrong with an answer, or with a question that somebody wrote. */
import { type StatementOf, say } from '../../statement.ts';
import { type AnswerSaid, answers } from '../answers.ts';
import { speech } from '../speech.ts';

/** A state that something can have: `lit`. */
type State = Exclude<AnswerSaid['says'], 'volts' | 'pair' | 'choice' | 'written'>;

interface Choices {
  readonly choices: readonly State[];
}
const listed = (states: readonly State[]): string =>
  states.map((state) => say(answers, { says: state })).join(', ');

const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;
/** A word of an answer, in quotation marks: its beginning, and nothing that a terminal would obey. */
const shown = (word: string): string => `"${word.replace(UNPRINTABLE, ' ').slice(0, 40)}"`;

/** The two terminals of each choice, in their order. */
interface Pairs {
  readonly pairs: readonly (readonly [string, string])[];
}
const numbered = ({ pairs }: Pairs): string =>
  pairs.map((pair, index) => `${index + 1}: ${pair.join(' and ')}`).join('; ');

export const questionProblems = {
  /** `asked`: what is asked, as it can be written. */
  'answer-missing': ({ asked }: { asked: string }) => ({
    wrong: 'Nothing was answered.',
    right: `Asked is: ${asked}.`,
  }),
  'answer-missing.choice': (choices: Pairs) => ({
    wrong: 'Nothing was answered.',
    right: `The choices are ${numbered(choices)}.`,
  }),
  'answer-missing.volts': {
    wrong: 'Nothing was answered.',
    right: 'Write the volts, or "nothing".',
  },
  'answer-unknown-word': ({ word, item, choices }: Choices & { word: string; item: string }) => ({
    wrong: `${shown(word)} is no state of ${item}.`,
    right: `Write one of: ${listed(choices)}.`,
  }),
  'answer-twice': ({ item, states }: { item: string; states: readonly [State, State] }) => ({
    wrong: `${item} is answered twice: ${speech.and(states.map((state) => say(answers, { says: state })))}.`,
    right: 'Say it once.',
  }),
  'answer-count': ({ states, things, asked }: { states: number; things: number; asked: string }) => ({
    wrong: `There are ${states} states for ${things} things asked.`,
    right: `Give one for each, in this order: ${asked}. A ? leaves one out.`,
  }),
  'answer-unknown-item': ({ word, asked }: { word: string; asked: string }) => ({
    wrong: `${shown(word)} isn't asked.`,
    right: `Asked is: ${asked}.`,
  }),
  'answer-unknown-item.after': ({ word, after, asked }: { word: string; after: number; asked: string }) => ({
    wrong: `${shown(word)} isn't asked after ${after}.`,
    right: `Asked is: ${asked}.`,
  }),
  /** In an answer that a program made. */
  'answer-unknown-item.key': ({ key, asked }: { key: string; asked: readonly string[] }) => ({
    wrong: `${shown(key)} wasn't asked.`,
    right: `Asked is: ${asked.join(', ')}.`,
  }),
  'answer-ambiguous': ({ word, items }: { word: string; items: readonly string[] }) => ({
    wrong: `${shown(word)} is asked more than once.`,
    right: `Write it in full: ${items.join(' or ')}.`,
  }),
  'answer-ambiguous.step': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is asked more than once.`,
    right: 'Write the step first: after 1: H1 lit; after 2: H1 dark.',
  }),
  'answer-ambiguous.choice': ({ word, ...choices }: Pairs & { word: string }) => ({
    wrong: `${shown(word)} could be more than one choice.`,
    right: `Write its number. ${numbered(choices)}.`,
  }),
  'answer-no-such-choice': ({ word, ...choices }: Pairs & { word: string }) => ({
    wrong: `${shown(word)} is none of the choices.`,
    right: `Write the number of one. ${numbered(choices)}.`,
  }),
  /** In an answer that a program made. */
  'answer-no-such-choice.number': ({ number, of }: { number: number; of: number }) => ({
    wrong: `There is no choice ${number}.`,
    right: `There are ${of}.`,
  }),
  'answer-without-state': ({ item, choices }: Choices & { item: string }) => ({
    wrong: `Nothing is said of how ${item} stands.`,
    right: `Write one of these after it: ${listed(choices)}.`,
  }),
  'answer-not-a-number': ({ word }: { word: string }) => ({
    wrong: `${shown(word)} is no reading.`,
    right: 'Write one number of volts, such as 12 V, or "nothing".',
  }),
  /** In an answer that a program made. */
  'answer-not-a-number.given': {
    wrong: 'What was answered is no number.',
    right: 'Answer with a number of volts.',
  },
  'answer-impossible-state': ({ word, item, choices }: Choices & { word: string; item: string }) => ({
    wrong: `${shown(word)} is no state of ${item}.`,
    right: `It can be: ${listed(choices)}.`,
  }),
  'answer-other-kind': ({ given, asked }: { given: string; asked: string }) => ({
    wrong: `This answers a question of the kind ${given}.`,
    right: `Asked is a question of the kind ${asked}.`,
  }),

  'question-not-certain': {
    wrong: 'The scenario has no single outcome.',
    right: 'Two relays race, or something never comes to rest: change the circuit or the acts.',
  },
  'question-not-certain.wired': {
    wrong: 'With the right choice something races or never comes to rest.',
    right: 'Change the circuit or the acts.',
  },
  'question-no-such-step': ({ item, after, acts }: { item: string; after: number; acts: number }) => ({
    wrong: `${item} is asked after ${after} acts.`,
    right: `There are ${acts}.`,
  }),
  'question-asked-twice': {
    wrong: 'The same thing is asked twice.',
    right: 'Ask it once.',
  },
  'question-asked-twice.points': {
    wrong: 'Both points are the same.',
    right: 'Measure between two points.',
  },
  'question-unknown-item': ({ item }: { item: string }) => ({
    wrong: `${item} can't be asked about in this circuit.`,
    right: 'Ask for something that it has.',
  }),
  'question-unknown-item.terminal': ({ at }: { at: string }) => ({
    wrong: `There is no terminal ${at}.`,
    right: 'Write terminals that the circuit has.',
  }),
  'question-unknown-item.point': ({ at }: { at: string }) => ({
    wrong: `There is no terminal ${at}.`,
    right: 'Measure between two terminals of the circuit.',
  }),
  'question-unknown-item.load': ({ load }: { load: string }) => ({
    wrong: `There is no lamp, load or input ${load}.`,
    right: 'Want something of a load that the circuit has.',
  }),
  'question-between': ({ item }: { item: string }) => ({
    wrong: `${item} has only a part of its voltage.`,
    right: 'Ask for another terminal.',
  }),
  'question-not-offered': ({ item, state }: { item: string; state: State }) => ({
    wrong: `${item} is ${say(answers, { says: state })}, which is not among the possible answers.`,
    right: 'Ask for something else.',
  }),
  /** `working`: how many of the choices do. */
  'question-choices': ({ working }: { working: number }) => ({
    wrong:
      working === 0
        ? 'None of the choices does what is wanted.'
        : `${working} of the choices do what is wanted.`,
    right: 'Change the choices or what is wanted until exactly one does.',
  }),
};
export type QuestionProblemSaid = StatementOf<typeof questionProblems>;
