/** Why an answer has its grade: `graded so because …`. */
import type { StatementOf } from '../statement.ts';

const percent = (share: number): string => `${Math.round(share * 100)} %`;

export const grading = {
  explained: 'the explanation was opened before answering',
  below: ({ share }: { share: number }) => `fewer than ${percent(share)} of the part marks`,
  incomplete: 'some part marks missing',
  hinted: 'full marks with a hint',
  tooQuick: ({ share }: { share: number }) =>
    `full marks in less than ${percent(share)} of the expected time, too quick to have read the drawing`,
  fluent: ({ share }: { share: number }) =>
    `full marks without help in at most ${percent(share)} of the expected time`,
  otherwise: 'full marks without help, in any other time or unmeasured',
};
export type GradingSaid = StatementOf<typeof grading>;
