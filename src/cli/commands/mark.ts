import type { Command } from 'commander';
import { z } from 'zod';
import type { Checked } from '../../../shared/problem.ts';
import {
  type Answer,
  answer as answerSchema,
  type Question,
  question as questionSchema,
} from '../../../shared/question.ts';
import { readCircuitJson } from '../../circuit/index.ts';
import { checkQuestion, markAnswer, readAnswer } from '../../questions/index.ts';
import { readGiven } from '../files.ts';
import { helpAfter } from '../help.ts';
import { type Io, UsageError } from '../io.ts';
import { markText } from '../mark-text.ts';
import { reportProblems } from '../problems.ts';
import type { Running } from '../program.ts';

interface Options {
  readonly answer?: string;
  readonly json?: boolean;
}

const given = z.looseObject({ question: questionSchema, answer: answerSchema.optional() });

/** Reads `{ "question": …, "answer": … }`, as `ask` prints it. */
async function readQuestion(
  io: Io,
  file: string,
): Promise<{ question: Question; answer: Answer | undefined }> {
  const text = await readGiven(io, file);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    throw new UsageError(
      `${file} is no JSON: ${error instanceof Error ? error.message : ''}`,
      'Give what `polewise ask` prints.',
    );
  }
  const read = given.safeParse(value);
  if (read.success) return { question: read.data.question, answer: read.data.answer };
  const [issue] = read.error.issues;
  throw new UsageError(
    `${file} is no question: ${issue?.path.join('.') || 'it'}: ${(issue?.message ?? '').replace(/^Invalid input: /, '')}`,
    'Give what `polewise ask` prints.',
  );
}

export function addMark(program: Command, io: Io, running: Running): void {
  program
    .command('mark')
    .summary('mark an answer')
    .description(
      'Marks an answer to a question: part by part, the wrong idea behind it, and why the right answer is right.',
    )
    .argument('<file>', 'a question as `ask` prints it, with or without an answer; - for standard input')
    .option('--answer <text>', 'the answer as one would type it in the drill')
    .option('--json', 'print the mark as JSON')
    .addHelpText(
      'after',
      helpAfter(
        io,
        [
          'polewise mark question.json --answer "H1 lit, H2 dark"',
          'polewise ask --seed 7 --with-answer | polewise mark - --json',
        ],
        "Exit code 0 whether the answer is right or wrong; 2 when the question or the answer can't be read.",
      ),
    )
    .action(async (file: string, options: Options) => {
      const { question, answer } = await readQuestion(io, file);
      const circuit = readCircuitJson(question.circuit);
      const problems = circuit.ok ? checkQuestion(question) : circuit.problems;
      if (problems.length > 0) {
        running.code = reportProblems(problems, file, io);
        return;
      }
      const read: Checked<Answer> | undefined =
        options.answer !== undefined ? readAnswer(question, options.answer) : undefined;
      if (read && !read.ok) {
        running.code = reportProblems(read.problems, '--answer', io);
        return;
      }
      const chosen = read?.ok ? read.value : answer;
      if (!chosen)
        throw new UsageError(
          'There is no answer to mark.',
          'Give one with --answer, or in the file under "answer".',
        );
      if (chosen.kind !== question.kind) {
        throw new UsageError(
          `The answer is for a question of the kind ${chosen.kind}, this is ${question.kind}.`,
          'Give the answer to this question.',
        );
      }
      const mark = markAnswer(question, chosen);
      io.out(options.json ? JSON.stringify(mark, null, 2) : markText(mark, io));
    });
}
