/** What guessing comes to, as tables: each way of guessing by kind, and the best way by skill. */
import { bestOf, mostRight } from './bounds.ts';
import type { Guessed } from './measure.ts';
import type { Case } from './seen.ts';

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
const two = (share: number): string => share.toFixed(2);

/** Of wiring questions: the mean of one in so many choices. */
export function chanceOf(asked: readonly Case[]): number {
  const chances = asked.flatMap(({ seen: { choices } }) => (choices.length > 0 ? [1 / choices.length] : []));
  return chances.reduce((sum, chance) => sum + chance, 0) / chances.length;
}

export function guessingTables(rows: readonly Guessed[], asked: readonly Case[]): string {
  const kinds = [...new Set(rows.map(({ kind }) => kind))];
  const byKind = rows
    .filter(({ skill }) => skill === 'all')
    .map(
      ({ kind, strategy, right, share, net, questions }) =>
        `| ${kind} | ${strategy} | ${percent(right)} | ${two(net)} | ${two(share)} | ${questions} |`,
    );
  const bySkill = kinds.flatMap((kind) => {
    const skills = [
      ...new Set(rows.filter((row) => row.kind === kind && row.skill !== 'all').map(({ skill }) => skill)),
    ];
    return skills.map((skill) => {
      const its = rows.filter((row) => row.kind === kind && row.skill === skill);
      const best = bestOf(its, 'right');
      return `| ${skill} | ${kind} | ${best.strategy} | ${percent(best.right)} | ${two(bestOf(its, 'net').net)} | ${best.questions} |`;
    });
  });
  return [
    '| kind | way of guessing | whole questions right | marks, losses counted | marks as given | questions |',
    '|---|---|---|---|---|---|',
    ...byKind,
    '',
    `Bounds for whole questions: ${kinds.map((kind) => `${kind} ${percent(mostRight(kind, chanceOf(asked)))}`).join(', ')}.`,
    '',
    '| skill | kind | best way | whole questions right | marks, losses counted | questions |',
    '|---|---|---|---|---|---|',
    ...bySkill,
  ].join('\n');
}
