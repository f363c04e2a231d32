/** What can be answered to the items of a paper, and nothing else. */
import type { Answer } from '../../../shared/question.ts';
import { askQuestion } from '../../questions/index.ts';
import type { PaperHead } from '../../store/index.ts';
import { ApiFailure } from '../problems.ts';
import { wholePaper } from './access.ts';
import type { Desk } from './desk.ts';

/** Possible answers, by what is asked. */
export type Choices = ReadonlyMap<string, ReadonlySet<string>>;

/** Papers of which it is remembered: a paper never changes, and reading one takes a hundred times as long as a save. */
const MOST_REMEMBERED = 2000;
const remembered = new WeakMap<Desk, Map<string, readonly Choices[]>>();

export async function askedOn(desk: Desk, head: PaperHead): Promise<readonly Choices[]> {
  const papers = remembered.get(desk) ?? new Map<string, readonly Choices[]>();
  remembered.set(desk, papers);
  const known = papers.get(head.id);
  if (known) return known;
  const { paper } = await wholePaper(desk, head);
  const asked = paper.items.map(
    ({ question }) =>
      new Map(
        askQuestion(question).items.map(({ item, choices }) => [
          item,
          new Set(choices.map(({ says }, at) => (says === 'pair' ? String(at) : says))),
        ]),
      ),
  );
  const [oldest] = papers.keys();
  if (oldest !== undefined && papers.size >= MOST_REMEMBERED) papers.delete(oldest);
  papers.set(head.id, asked);
  return asked;
}

/** What in an answer wasn't asked, or can't be answered to it; null when nothing. */
export function notAsked(choices: Choices, item: number, answer: Answer): ApiFailure | null {
  if (!('states' in answer)) {
    if (!('choice' in answer)) return null;
    const [offered] = choices.values();
    return answer.choice === undefined || answer.choice < (offered?.size ?? 0)
      ? null
      : new ApiFailure({ says: 'bad-answer.noChoice', item: item + 1, choice: answer.choice + 1 });
  }
  for (const [name, state] of Object.entries(answer.states)) {
    const offered = choices.get(name);
    if (!offered)
      return new ApiFailure({ says: 'bad-answer.notAsked', item: item + 1, name: name.slice(0, 40) });
    if (!offered.has(state)) return new ApiFailure({ says: 'bad-answer.notOffered', item: item + 1, name });
  }
  return null;
}
