/** What has to be said to put a question: the page fetches this part with the first one. */
import { answers } from './answers.ts';
import { acts, faults } from './circuit.ts';
import { lettering } from './lettering.ts';
import { practice } from './practice.ts';
import { cautions, labels, moment, situation } from './questions/asking.ts';
import { kinds } from './questions/kinds.ts';
import { speech } from './speech.ts';

export const asking = {
  speech,
  acts,
  faults,
  answers,
  situation,
  labels,
  moment,
  cautions,
  kinds,
  practice,
  lettering,
};
