import type { Checked } from '../../../shared/problem.ts';
import type { AnswerOf, QuestionOf } from '../../../shared/question.ts';
import type { Words } from '../../words/index.ts';
import { problemIn, shownWord } from './read-states.ts';
import { plainName } from './tokens.ts';

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
  const list = choices.map((pair, index) => `${index + 1}: ${pair.join(' and ')}`).join('; ');
  if (bare === '')
    return {
      ok: false,
      problems: [problemIn('answer-missing', 'Nothing was answered.', `The choices are ${list}.`)],
    };
  return {
    ok: false,
    problems: [
      matching.length > 1
        ? problemIn(
            'answer-ambiguous',
            `${shownWord(bare)} could be more than one choice.`,
            `Write its number. ${list}.`,
          )
        : problemIn(
            'answer-no-such-choice',
            `${shownWord(bare)} is none of the choices.`,
            `Write the number of one. ${list}.`,
          ),
    ],
  };
}
