/** Why one answer is refused, beside others that aren't. Kinds go by the names that the interface has for them. */
import { say } from '../../statement.ts';
import { type FormSaid, forms } from '../forms.ts';

const UNCHANGED = 'Send it as it was made, without changes.';
const AS_OFFERED = 'Send what the paper asks, in the words that it offers.';

export const answers = {
  // Of practice.
  'answer-too-large': ({ values, letters }: { values: number; letters: number }) => ({
    wrong: `The answer has more than ${values} values or ${letters} letters.`,
    right: 'Circuits of this size can not be practised.',
  }),
  'bad-answer.form': ({ form }: { form: FormSaid }) => ({
    wrong: `The answer is not of the form wanted. ${say(forms, form)}`,
    right: UNCHANGED,
  }),
  'bad-answer.unkeepable': ({ field }: { field: string }) => ({
    wrong: `There are characters in ${field} that can't be kept.`,
    right: 'Use letters, digits and signs.',
  }),
  'bad-answer.otherKind': ({ asked, given }: { asked: string; given: string }) => ({
    wrong: `The question is of the kind ${asked} and the answer of the kind ${given}.`,
    right: UNCHANGED,
  }),
  'bad-answer.otherShare': {
    wrong: 'The mark and the attempt have different shares.',
    right: UNCHANGED,
  },
  'foreign-learner': ({ learner }: { learner: string }) => ({
    wrong: 'The answer is somebody else’s.',
    right: `Send it as the one who gave it; here everything belongs to ${learner}.`,
  }),
  'on-open-paper': ({ title }: { title: string }) => ({
    wrong: `This circuit is on your paper of “${title}”, which is open.`,
    right: 'It is marked there, when the paper has been handed in.',
  }),
  'bad-answer.ofHomework': {
    wrong: 'That is the id of an answer to homework.',
    right: 'Those are kept when the paper is marked; nothing has to be sent.',
  },

  // Of homework.
  'bad-answer.noItem': ({ item, items }: { item: number; items: number }) => ({
    wrong: `The paper has no item ${item}.`,
    right: `It has items 1 to ${items}.`,
  }),
  'bad-answer.otherItem': ({ item, asked, given }: { item: number; asked: string; given: string }) => ({
    wrong: `Item ${item} is of the kind ${asked} and the answer of the kind ${given}.`,
    right: 'Send the answer with the item that it was given to.',
  }),
  'bad-answer.noChoice': ({ item, choice }: { item: number; choice: number }) => ({
    wrong: `Item ${item} has no choice ${choice}.`,
    right: AS_OFFERED,
  }),
  'bad-answer.notAsked': ({ item, name }: { item: number; name: string }) => ({
    wrong: `Item ${item} does not ask for ${name}.`,
    right: AS_OFFERED,
  }),
  'bad-answer.notOffered': ({ item, name }: { item: number; name: string }) => ({
    wrong: `Item ${item} offers no such answer for ${name}.`,
    right: AS_OFFERED,
  }),
};
