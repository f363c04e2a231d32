/** Why an answer has its grade: `graded so because …`. */
import type { StatementOf } from '../statement.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export const grading = {
  explained: 'the explanation was opened before answering',
  below: 'more than a third of the parts wrong or left out',
  incomplete: 'some parts wrong or left out',
  hinted: 'all right with a hint',
  tooQuick: ({ share }: { share: number }) =>
    `all right in less than ${percent(share)} of the expected time, too quick to have read the drawing`,
  fluent: ({ share }: { share: number }) =>
    `all right without help in at most ${percent(share)} of the expected time`,
  otherwise: 'all right without help, in any other time or unmeasured',
};
export type GradingSaid = StatementOf<typeof grading>;
