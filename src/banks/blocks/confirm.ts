/** Whether the solver says the same as the author. */
import type { QuestionKind } from '../../../shared/question.ts';
import { checkQuestion, explain, KINDS, type Kind, markAnswer, rightAnswer } from '../../questions/index.ts';
import type { AnswerSaid } from '../../words/index.ts';
import { BANK_LIMITS } from '../limits.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { AskedQuestion } from './kinds/index.ts';
import type { TopicBlocks } from './topic-blocks.ts';

/** Steps of the explanation that are told beside a wrong answer. */
const STEPS_TOLD = 4;

/**
 * Reports what keeps a question from having one right answer, and every part of the author's answer that the solver
 * doesn't give, with the solver's reasons.
 *
 * @param position - where the question stands, for what concerns all of it
 * @returns whether the answer is confirmed
 */
export function confirm(
  asked: AskedQuestion,
  position: Position,
  blocks: TopicBlocks,
  report: BankReport,
): boolean {
  const { circuit, scenario } = asked.question;
  const cost = circuit.devices.length * (scenario.acts.length + 1);
  if (blocks.solvingLeft < cost) {
    report.add({ says: 'bank-too-large.unconfirmed' }, position);
    return false;
  }
  const confirmed = isConfirmed(asked, position, report);
  blocks.solvingLeft -= confirmed ? cost : cost * BANK_LIMITS.refusedCosts;
  return confirmed;
}

function isConfirmed(asked: AskedQuestion, position: Position, report: BankReport): boolean {
  const { question, answer } = asked;
  const unclear = checkQuestion(question);
  if (unclear.length > 0) {
    report.within(
      unclear.map(({ code, said }) => ({ code, said })),
      position,
    );
    return false;
  }
  const kind: Pick<Kind<QuestionKind>, 'parts'> = KINDS[question.kind];
  const { parts, problems } = kind.parts(question, answer, rightAnswer(question));
  // Explaining takes far longer than comparing, and a right answer needs none.
  if (problems.length === 0 && parts.length > 0 && parts.every(({ correct }) => correct)) return true;
  reportWrong(asked, position, report);
  return false;
}

function reportWrong(
  { question, answer, answered }: AskedQuestion,
  position: Position,
  report: BankReport,
): void {
  const { mark, problems } = markAnswer(question, answer);
  const { decides } = explain(question);
  report.within(
    problems.map(({ code, said }) => ({ code, said })),
    position,
  );
  for (const { item, given, right } of mark.parts.filter(({ correct }) => !correct)) {
    const { said, behind } = decides.find((decision) => decision.item === item)!;
    const why = [said, ...behind.map((step) => step.said)].slice(0, STEPS_TOLD);
    const author = answered.get(item);
    report.add(
      {
        says: 'bank-not-confirmed',
        of: author?.text ?? item,
        given: given as AnswerSaid | undefined,
        right: right as AnswerSaid,
        why,
      },
      author?.position ?? position,
    );
  }
}
