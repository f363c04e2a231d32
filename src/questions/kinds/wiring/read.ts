import type { Checked } from '../../../../shared/problem.ts';
import type { AnswerOf, QuestionOf } from '../../../../shared/question.ts';
import type { QuestionProblemSaid, Words } from '../../../words/index.ts';
import { plainName } from '../../answer/tokens.ts';
import { questionProblem } from '../../problem-codes.ts';

/** Reads `2`, `b`, `-K3:11 and -K3:12`, `K3 11-12`, `11-12` where only one choice has those terminals. */
export function readChoice(
  { choices }: QuestionOf<'wiring'>,
  text: string,
  { typed }: Pick<Words, 'typed'>,
): Checked<AnswerOf<'wiring'>> {
  const trimmed = text.trim();
  const [first = ''] = trimmed.split(/\s/, 1);
  const bare = (
    typed.choice.includes(first.toLowerCase()) ? trimmed.slice(first.length).trim() : trimmed
  ).replace(/[.)]$/, '');
  const answer = (choice: number): Checked<AnswerOf<'wiring'>> => ({
    ok: true,
    value: { kind: 'wiring', choice },
  });
  const number = /^[0-9]$/.test(bare)
    ? Number(bare) - 1
    : /^[a-h]$/i.test(bare)
      ? bare.toLowerCase().charCodeAt(0) - 97
      : -1;
  if (number >= 0 && number < choices.length) return answer(number);
  const words = bare.toUpperCase().match(/[A-Z0-9+]+/g) ?? [];
  const terminals = new Set(words.filter((word) => !typed.to.includes(word.toLowerCase())));
  const matching = choices.flatMap((pair, index) => {
    const parts = pair.map((ref) => plainName(ref).split(':') as [string, string]);
    const ends = parts.every(([, terminal]) => terminals.has(terminal));
    const known = new Set(parts.flat());
    return ends && [...terminals].every((word) => known.has(word)) ? [index] : [];
  });
  if (matching.length === 1) return answer(matching[0]!);
  const fail = (said: QuestionProblemSaid): Checked<AnswerOf<'wiring'>> => ({
    ok: false,
    problems: [questionProblem(said)],
  });
  if (bare === '') return fail({ says: 'answer-missing.choice', pairs: choices });
  return fail({
    says: matching.length > 1 ? 'answer-ambiguous.choice' : 'answer-no-such-choice',
    word: bare,
    pairs: choices,
  });
}
