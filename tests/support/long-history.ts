/** Somebody who has practised for a year: everything held, but for one skill that was lost some days ago. */
import type { AnswerRecord } from '../../shared/practice.ts';
import { answerWith, DAY } from './answers.ts';
import { ownBank } from './own-bank.ts';

const SKILLS = ownBank().topics.flatMap((topic) => topic.skills.map(({ id }) => id));

/** What has to be asked next. */
export const LOST = SKILLS[7]!;

/** So many answers, the last ones of yesterday at the moment `now`. */
export function longHistory(count: number, now: number): AnswerRecord[] {
  const records = Array.from({ length: count }, (_, at) =>
    answerWith({
      id: `year-${at}`,
      at: now - DAY - Math.floor(((count - at) * 360 * DAY) / count),
      skill: SKILLS[at % SKILLS.length]!,
      circuit: `circuit-${at}`,
    }),
  );
  const lost = answerWith({
    id: 'year-lost',
    at: now - 3 * DAY,
    skill: LOST,
    circuit: 'circuit-lost',
    share: 0,
  });
  return [...records.filter(({ skill, at }) => skill !== LOST || at < now - 5 * DAY), lost];
}
