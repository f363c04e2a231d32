/** One question put in the terminal: asked, answered, marked, kept. */
import { nanoid } from 'nanoid';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Answer } from '../../../shared/question.ts';
import type { Recalls } from '../../memory/index.ts';
import { ideasTold, type Judged, judge, type Task } from '../../practice/index.ts';
import {
  askQuestion,
  blankAnswer,
  explain,
  hintFor,
  readAnswer,
  tellMark,
  tellQuestion,
} from '../../questions/index.ts';
import type { Store } from '../../store/index.ts';
import { say, type Words } from '../../words/index.ts';
import { tellProblems } from '../../words/problems.ts';
import { coreWordsOf } from '../core-words.ts';
import type { Io } from '../io.ts';
import { markText } from '../mark-text.ts';
import { questionText } from '../question-text.ts';
import { styleFor, wrapText } from '../style.ts';

/** On a machine of one's own there is one learner. */
export const LEARNER = 'me';

interface Reply {
  /** Undefined: passed without an answer. */
  readonly answer: Answer | undefined;
  readonly hint: boolean;
  readonly seconds: number;
}

const PASS: ReadonlySet<string> = new Set(['pass', 'skip']);
const STOP: ReadonlySet<string> = new Set(['stop', 'quit', 'exit', 'end']);

/** Whether what was typed ends the practice. */
export const stops = (line: string): boolean => STOP.has(line.trim().toLowerCase());

/** Asks until there is an answer that can be read; undefined when the learner stops. */
async function replyTo(task: Task, words: Words, io: Io): Promise<Reply | undefined> {
  const style = styleFor(io);
  const shownAt = io.now();
  let hint = false;
  for (;;) {
    const line = (await io.question(style.strong('> ')))?.trim();
    if (line === undefined || stops(line)) return undefined;
    const seconds = (io.now() - shownAt) / 1000;
    if (line === '') {
      io.out(io.words.drill.typeAnAnswer);
      continue;
    }
    if (line === '?') {
      hint = true;
      io.out(wrapText(say(words.hints, hintFor(task.question)), io.columns));
      continue;
    }
    if (PASS.has(line.toLowerCase())) return { answer: undefined, hint, seconds };
    const answer = readAnswer(words, task.question, line);
    if (answer.ok) return { answer: answer.value, hint, seconds };
    for (const { message, hint: right } of tellProblems(words, answer.problems))
      io.out(wrapText(`${message} ${right}`, io.columns));
  }
}

interface Keeping {
  readonly store: Store;
  readonly recalls: Recalls;
  /** The learner's answers so far, in their order. */
  readonly before: readonly AnswerRecord[];
}

/**
 * Puts a question under a heading and marks what is answered; the answer is on the disk before its mark is shown.
 * Undefined when the learner stops.
 */
export async function put(
  task: Task,
  heading: string,
  { store, recalls, before }: Keeping,
  io: Io,
): Promise<Judged | undefined> {
  const words = await coreWordsOf(io);
  const asked = tellQuestion(words, askQuestion(task.question));
  io.out(questionText(words, task.question.circuit, asked, io, heading));
  const reply = await replyTo(task, words, io);
  if (!reply) return undefined;
  const judged = judge(
    task,
    {
      id: nanoid(),
      learner: LEARNER,
      at: io.now(),
      answer: reply.answer ?? blankAnswer(task.question),
      help: { hint: reply.hint, explanation: false },
      secondsUsed: reply.seconds,
    },
    recalls,
  );
  await store.keepAnswer(judged.record);
  const ideas = ideasTold([...before, judged.record]);
  io.out(`\n${markText(tellMark(words, judged, explain(task.question), ideas), io)}`);
  if (task.because) io.out(`\n${wrapText(task.because, io.columns)}`);
  io.out('');
  return judged;
}

/** Waits between two questions where somebody sits there; false when the learner stops. */
export async function goesOn(io: Io): Promise<boolean> {
  if (!io.interactive) return true;
  const line = await io.question(styleFor(io).quiet(io.words.drill.enterForNext));
  return line !== undefined && !stops(line);
}
