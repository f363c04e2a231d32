/** Marks a paper: each item by the solver, blanks included, so that every learner can look through every item. */
import type { ItemMark, Paper, PaperItem, PaperMark, SavedAnswer } from '../../../shared/homework.ts';
import type { Mark } from '../../../shared/question.ts';
import { blankAnswer, markAnswer } from '../../questions/index.ts';
import { finish } from '../steps.ts';

function answeredIn({ parts }: Mark): ItemMark['answered'] {
  const given = parts.filter((part) => part.given !== undefined).length;
  return given === 0 ? 'none' : given === parts.length ? 'all' : 'part';
}

function markItem({ skill, circuit, marks, question }: PaperItem, saved: SavedAnswer | undefined): ItemMark {
  const { mark } = markAnswer(question, saved?.answer ?? blankAnswer(question));
  return {
    skill,
    circuit,
    marks,
    answered: answeredIn(mark),
    hint: saved?.hint ?? false,
    secondsUsed: saved?.secondsUsed ?? null,
    mark,
    overrides: [],
  };
}

/**
 * The mark of a paper. What is not in `answers` (index of the item to the answer that counts) was left out and earns
 * nothing; of an item answered in part, the parts that were answered count.
 */
export const markPaper = (paper: Paper, answers: ReadonlyMap<number, SavedAnswer>): PaperMark =>
  finish(markInSteps(paper, answers));

/** The same in steps of one item each, for whoever has other things to do in between. */
export function* markInSteps(
  { set, learner, attempt, items }: Paper,
  answers: ReadonlyMap<number, SavedAnswer>,
): Generator<undefined, PaperMark> {
  const marked: ItemMark[] = [];
  for (const [index, item] of items.entries()) {
    marked.push(markItem(item, answers.get(index)));
    yield undefined;
  }
  return { set, learner, attempt, items: marked };
}
