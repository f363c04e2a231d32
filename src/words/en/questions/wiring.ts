import { say } from '../../statement.ts';
import { type AnswerSaid, answers } from '../answers.ts';
import { type ActSaid, acts, type Named } from '../circuit.ts';
import { listThen } from '../text.ts';
import { labelled } from './asking.ts';

/** How one load is to stand after some acts. */
export interface Wanted {
  readonly load: Named;
  readonly state: AnswerSaid;
  readonly acts: readonly ActSaid[];
}

const wanted = ({ load, state, acts: done }: Wanted): string => {
  const stands =
    state.says === '0' || state.says === '1' ? `reads ${state.says}` : `is ${say(answers, state)}`;
  const when = done.length === 0 ? 'at the start' : `after: ${listThen(done.map((act) => say(acts, act)))}`;
  return `${labelled(load)} ${stands} ${when}`;
};

export const wiring = {
  title: 'Wiring',
  /** In a list of kinds. */
  short: 'wiring',
  looseEnds: ({ from, to }: { from: string; to: string }): string =>
    `Two conductors are not connected yet: the one from ${from} and the one to ${to}.`,
  wantedFollows: 'This is wanted:',
  wanted: ({ number, ...what }: Wanted & { number: number }): string => `${number}. ${wanted(what)}.`,
  task: 'To which two terminals do they have to be connected?',
  how: ({ choices }: { choices: number }): string =>
    `Write the number of the choice (1 to ${choices}), or its two terminals.`,
};
