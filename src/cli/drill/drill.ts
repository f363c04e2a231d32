/** The drill: question after question in the terminal until the count is reached or the learner stops. */
import { nanoid } from 'nanoid';
import type { AnswerRecord } from '../../../shared/practice.ts';
import type { Answer, Asked } from '../../../shared/question.ts';
import type { Recalls } from '../../memory/index.ts';
import { type Course, type Judged, judge, nextTask, summarise, type Task } from '../../practice/index.ts';
import { askQuestion, blankAnswer, hintFor, readAnswer } from '../../questions/index.ts';
import type { Store } from '../../store/index.ts';
import type { Io } from '../io.ts';
import { markText } from '../mark-text.ts';
import { questionText } from '../question-text.ts';
import { styleFor, wrapText } from '../style.ts';
import { summaryText } from './summary-text.ts';

/** On a machine of one's own there is one learner. */
export const LEARNER = 'me';

export interface DrillOptions {
  readonly course: Course;
  readonly store: Store;
  readonly seed: string;
  readonly count: number;
  readonly skill?: string;
}

const WHY: Readonly<Record<Task['why'], string>> = {
  due: 'due for review',
  planned: 'chosen for today',
  unproven: 'once more, on another circuit',
  new: 'new',
  ahead: 'ahead of time',
};

interface Reply {
  /** Undefined: passed without an answer. */
  readonly answer: Answer | undefined;
  readonly hint: boolean;
  readonly seconds: number;
}

const PASS: ReadonlySet<string> = new Set(['pass', 'skip']);
const STOP: ReadonlySet<string> = new Set(['stop', 'quit', 'exit', 'end']);

/** Asks until there is an answer that can be read; undefined when the learner stops. */
async function replyTo(task: Task, io: Io): Promise<Reply | undefined> {
  const style = styleFor(io);
  const shownAt = io.now();
  let hint = false;
  for (;;) {
    const line = (await io.question(style.strong('> ')))?.trim();
    if (line === undefined || STOP.has(line.toLowerCase())) return undefined;
    const seconds = (io.now() - shownAt) / 1000;
    if (line === '') {
      io.out('Type an answer. ? gives a hint, pass shows the answer, stop ends the practice.');
      continue;
    }
    if (line === '?') {
      hint = true;
      io.out(wrapText(hintFor(task.question), io.columns));
      continue;
    }
    if (PASS.has(line.toLowerCase())) return { answer: undefined, hint, seconds };
    const answer = readAnswer(task.question, line);
    if (answer.ok) return { answer: answer.value, hint, seconds };
    for (const { message, hint: right } of answer.problems)
      io.out(wrapText(`${message} ${right}`, io.columns));
  }
}

async function keep(store: Store, judged: Judged): Promise<void> {
  await store.keepAnswer(judged.record);
}

/** Runs a whole practice; every answer is on the disk before its mark is shown. */
export async function runDrill({ course, store, seed, count, skill }: DrillOptions, io: Io): Promise<void> {
  const style = styleFor(io);
  const before = await store.answersOf(LEARNER);
  const seen = new Set(before.map(({ circuit }) => circuit));
  let recalls: Recalls = await store.recallsOf(LEARNER);
  const given: AnswerRecord[] = [];
  const recent: string[] = [];
  for (let number = 0; number < count; number++) {
    const next = nextTask({
      course,
      recalls,
      at: io.now(),
      seed,
      number,
      recent,
      seen,
      ...(skill ? { only: skill } : {}),
    });
    if (!next.ok) {
      io.out(
        next.reason === 'nothing'
          ? 'Nothing more to practise now.'
          : `No new circuit was found for ${next.skill}.`,
      );
      break;
    }
    const { task } = next;
    const asked: Asked = askQuestion(task.question);
    const title = course.skills.get(task.skill)?.title ?? task.skill;
    io.out(style.quiet('─'.repeat(Math.min(io.columns, 72))));
    io.out(`${style.strong(`Question ${number + 1} of ${count}`)}  ${title} (${WHY[task.why]})\n`);
    io.out(questionText(task.question.circuit, asked, io));
    const reply = await replyTo(task, io);
    if (!reply) break;
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
    await keep(store, judged);
    recalls = new Map([...recalls, [task.skill, judged.recall]]);
    given.push(judged.record);
    recent.push(task.skill);
    seen.add(task.circuit);
    io.out(`\n${markText(judged.mark, io)}`);
    if (task.because) io.out(`\n${wrapText(task.because, io.columns)}`);
    io.out('');
    if (number + 1 < count && io.interactive) {
      const line = await io.question(style.quiet('Enter for the next question, stop to end: '));
      if (line === undefined || STOP.has(line.trim().toLowerCase())) break;
    }
  }
  io.out(summaryText(summarise(course, given, recalls, io.now()), given.length, io));
}
