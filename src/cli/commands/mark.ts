import { z } from 'zod';
import type { Checked } from '../../../shared/problem.ts';
import {
  type Answer,
  answer as answerSchema,
  type Question,
  question as questionSchema,
} from '../../../shared/question.ts';
import { readCircuitJson, readJson } from '../../circuit/index.ts';
import { checkQuestion, explain, markAnswer, readAnswer, tellMark } from '../../questions/index.ts';
import { formSaid } from '../../words/form-said.ts';
import { coreWordsOf } from '../core-words.ts';
import { readGiven } from '../files.ts';
import { type Io, UsageError } from '../io.ts';
import { markText } from '../mark-text.ts';
import { reportProblems } from '../problems.ts';

export interface MarkOptions {
  readonly answer?: string;
  readonly json?: boolean;
}

const given = z.looseObject({ question: questionSchema, answer: answerSchema.optional() });

/** Reads `{ "question": …, "answer": … }`, as `ask` prints it. */
async function readQuestion(
  io: Io,
  file: string,
): Promise<{ question: Question; answer: Answer | undefined }> {
  const { mark: said } = io.words;
  const text = await readGiven(io, file);
  const json = readJson(text);
  if (!json.ok) throw new UsageError(said.noJson({ file, ...json.mistake }), said.wanted);
  const { value } = json;
  const read = given.safeParse(value);
  if (read.success) return { question: read.data.question, answer: read.data.answer };
  throw new UsageError(said.noQuestion({ file, form: formSaid(read.error.issues[0]!, value) }), said.wanted);
}

/** Marks an answer to a question; gives the exit code. */
export async function markFile(file: string, options: MarkOptions, io: Io): Promise<0 | 2> {
  const { mark: said } = io.words;
  const words = await coreWordsOf(io);
  const { question, answer } = await readQuestion(io, file);
  const circuit = readCircuitJson(question.circuit);
  const problems = circuit.ok ? checkQuestion(question) : circuit.problems;
  if (problems.length > 0) return reportProblems(problems, file, io);
  const read: Checked<Answer> | undefined =
    options.answer !== undefined ? readAnswer(words, question, options.answer) : undefined;
  if (read && !read.ok) return reportProblems(read.problems, '--answer', io);
  const chosen = read?.ok ? read.value : answer;
  if (!chosen) throw new UsageError(said.noAnswer.wrong, said.noAnswer.right);
  if (chosen.kind !== question.kind) {
    throw new UsageError(
      said.anotherKind.wrong({ given: chosen.kind, wanted: question.kind }),
      said.anotherKind.right,
    );
  }
  const mark = tellMark(words, markAnswer(question, chosen), explain(question));
  io.out(options.json ? JSON.stringify(mark, null, 2) : markText(mark, io));
  return 0;
}
