/** Questions in the words of a language, for page, terminal and paper alike. */
import type { Asked, AskedItem } from '../../shared/question.ts';
import { type AnswerSaid, type AskingWords, type LabelSaid, say } from '../words/index.ts';
import type { ItemSaid, QuestionSaid } from './said.ts';

/** What an answer holds of a choice. */
const dataOf = (choice: AnswerSaid): string =>
  choice.says === 'pair' ? `${choice.first} ${choice.second}` : choice.says;

/** What is asked and when, where the label is made of that. */
function partsOf(words: AskingWords, label: LabelSaid): Pick<AskedItem, 'moment' | 'after' | 'named'> {
  if (label.says !== 'item' && label.says !== 'itemAfter') return {};
  const { name, text } = label.says === 'item' ? label : label.item;
  const named = text === undefined ? { name } : { name, text };
  return {
    ...(label.says === 'itemAfter' ? { moment: words.moment(label.moment), after: label.moment.after } : {}),
    named: { label: words.labels.item(named), ...named },
  };
}

function tellItem(words: AskingWords, { item, label, choices, unit, about }: ItemSaid): AskedItem {
  return {
    item,
    label: say(words.labels, label),
    ...partsOf(words, label),
    choices: choices.map((choice) => say(words.answers, choice)),
    values: choices.map(dataOf),
    ...(unit ? { unit } : {}),
    about: [...about],
  };
}

/** The question in words. */
export function tellQuestion(words: AskingWords, said: QuestionSaid): Asked {
  const { kind, form, situation, besides, task, how, items, cautions } = said;
  const own = words.kinds[kind];
  return {
    title: own.title,
    form,
    situation: [
      ...situation.map((each) => say(words.situation, each)),
      ...besides.map((each) => say(own, each as never)),
    ],
    task: say(own, task as never),
    items: items.map((item) => tellItem(words, item)),
    how: say(own, how as never),
    cautions: cautions.map((each) => say(words.cautions, each)),
  };
}
