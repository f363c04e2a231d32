/**
 * Questions that were issued. A circuit that the learner has seen is passed over, so an issued question has several
 * candidates; the first that is new to the learner is put. Whoever issued it makes them again, and sees whether that is so.
 */
import type { Recipe } from '../../shared/bank.ts';
import type { IssuedQuestion } from '../../shared/issued.ts';
import type { Question } from '../../shared/question.ts';
import { type Candidate, candidateFor } from './candidate.ts';

/** Candidates of one issued question; whoever has seen the circuits of all of them practises another one. */
export const MOST_CANDIDATES = 12;

const SEED = /^([A-Za-z0-9]{21})\/(\d{1,2})$/;

/** Which issued question it says it is, and which of its candidates; null where it says nothing of the kind. */
export function issuedIn({
  seed = '',
}: Question): { readonly id: string; readonly candidate: number } | null {
  const [, id, candidate] = SEED.exec(seed) ?? [];
  return id !== undefined && Number(candidate) < MOST_CANDIDATES
    ? { id, candidate: Number(candidate) }
    : null;
}

/** What an issued question is made with. */
export type Issue = Pick<IssuedQuestion, 'id' | 'reviews'>;

const candidateOf = (recipes: readonly Recipe[], { id, reviews }: Issue, number: number) =>
  candidateFor(recipes, reviews, `${id}/${number}`);

/** The question that is put to somebody who has seen these circuits. */
export function questionIssued(
  recipes: readonly Recipe[],
  issue: Issue,
  seen: ReadonlySet<string>,
): Candidate | undefined {
  for (let number = 0; number < MOST_CANDIDATES; number++) {
    const made = candidateOf(recipes, issue, number);
    if (made && !seen.has(made.circuit)) return made;
  }
  return undefined;
}

/** Texts as they stand in JSON, whatever the order of names. */
const sorted = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(sorted)
    : typeof value === 'object' && value !== null
      ? Object.fromEntries(
          Object.entries(value)
            .filter(([, entry]) => entry !== undefined)
            .toSorted(([one], [other]) => (one < other ? -1 : 1))
            .map(([name, entry]) => [name, sorted(entry)]),
        )
      : value;
const same = (one: unknown, other: unknown): boolean =>
  JSON.stringify(sorted(one)) === JSON.stringify(sorted(other));

/**
 * Whether this is the question that was issued, as somebody else says it was put: null when not. Otherwise the circuits that
 * were passed over for it, which its learner has to have seen.
 */
export function passedOverFor(
  recipes: readonly Recipe[],
  issue: Issue,
  question: Question,
): readonly string[] | null {
  const said = issuedIn(question);
  if (said?.id !== issue.id) return null;
  if (!same(candidateOf(recipes, issue, said.candidate)?.question, question)) return null;
  return Array.from({ length: said.candidate }, (_, number) => candidateOf(recipes, issue, number)).flatMap(
    (made) => (made ? [made.circuit] : []),
  );
}
