/** Reports in the words of a language: wrong ideas by what is told of them. Mutable, as what is sent is. */
import type { z } from 'zod';
import type { classReport, learnerReport, termReport } from '../../../shared/homework-reports.ts';
import type { ToldMark } from '../../../shared/question.ts';
import { explain, tellIdea, tellMark } from '../../questions/index.ts';
import type { Words } from '../../words/index.ts';
import type { ClassIdea, ClassReport } from './class-report.ts';
import type { LearnerReport } from './learner-report.ts';
import type { LookAfter } from './look-after.ts';
import type { TermReport } from './term-report.ts';

type ToldLearnerReport = z.infer<typeof learnerReport>;
type ToldClassReport = z.infer<typeof classReport>;
type ToldTermReport = z.infer<typeof termReport>;

/** With the idea's words in place. */
const told = <I extends { readonly id: string }>(words: Words, idea: I) => ({
  ...idea,
  ...tellIdea(words, idea.id),
});

export const tellLearnerReport = (words: Words, report: LearnerReport): ToldLearnerReport =>
  ({ ...report, ideas: report.ideas.map((idea) => told(words, idea)) }) as unknown as ToldLearnerReport;

export const tellTermReport = (words: Words, report: TermReport): ToldTermReport =>
  ({ ...report, ideas: report.ideas.map((idea) => told(words, idea)) }) as unknown as ToldTermReport;

function concernsTold(words: Words, { learner, concerns }: LookAfter) {
  return {
    learner,
    concerns: concerns.map((concern) =>
      concern.kind === 'firm-idea' ? { ...concern, idea: tellIdea(words, concern.id).idea } : concern,
    ),
  };
}

/** The mark of an example, with the reasons. */
export const tellExample = (words: Words, { item, mark }: NonNullable<ClassIdea['example']>): ToldMark =>
  tellMark(words, { mark, problems: [] }, explain(item.question));

export const tellClassReport = (words: Words, report: ClassReport): ToldClassReport =>
  ({
    ...report,
    ideas: report.ideas.map((idea) => ({
      ...told(words, idea),
      example: idea.example && { item: idea.example.item, mark: tellExample(words, idea.example) },
    })),
    lookAfter: report.lookAfter.map((one) => concernsTold(words, one)),
  }) as unknown as ToldClassReport;
