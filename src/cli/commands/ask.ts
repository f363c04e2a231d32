import type { Question, QuestionKind } from '../../../shared/question.ts';
import { questionKind } from '../../../shared/question.ts';
import { families, generate, randomOf } from '../../generator/index.ts';
import { newRecall } from '../../memory/index.ts';
import { nextTask } from '../../practice/index.ts';
import { askQuestion, mayAsk, proposeQuestion, rightAnswer, tellQuestion } from '../../questions/index.ts';
import { coreWordsOf } from '../core-words.ts';
import { openCourse } from '../course.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';

export interface AskOptions {
  readonly seed?: string;
  readonly skill?: string;
  readonly family?: string;
  readonly kind?: string;
  readonly size: string;
  readonly withAnswer?: boolean;
  readonly banks?: string;
}

/** Circuits tried before saying that a family has no question of that kind. */
const MOST_TRIES = 60;

async function fromSkill(io: Io, { banks }: AskOptions, skill: string, seed: string): Promise<Question> {
  const course = await openCourse(io, banks);
  if (!course.skills.has(skill)) {
    const { wrong, right } = io.words.course.noSkill;
    throw new UsageError(wrong(skill), right([...course.skills.keys()]));
  }
  // As begun: the first question of a skill is one that somebody wrote, and here a fresh one is wanted.
  const fixed = course.bank.topics.flatMap(({ questions }) => questions);
  const bare = {
    ...course,
    bank: { ...course.bank, topics: course.bank.topics.map((topic) => ({ ...topic, questions: [] })) },
  };
  const next = nextTask({
    course: bare,
    recalls: new Map([[skill, newRecall()]]),
    at: io.now(),
    seed,
    number: 0,
    recent: [],
    seen: new Set(),
    only: skill,
  });
  if (next.ok) return next.task.question;
  const { wrong, right } = io.words.ask.noCircuit;
  throw new UsageError(wrong(skill), right(fixed.length));
}

function fromFamily(
  io: Io,
  family: string,
  kinds: readonly QuestionKind[],
  size: number,
  seed: string,
): Question {
  for (let attempt = 0; attempt < MOST_TRIES; attempt++) {
    const child = `${seed}/${attempt}`;
    const made = generate({ seed: child, family, size, mayAsk: mayAsk(kinds) });
    if (!made.ok) continue;
    const question = proposeQuestion(made.accepted.draft, kinds, randomOf(`${child}/question`));
    if (question) return { ...question, seed: child };
  }
  const { wrong, right } = io.words.ask.noQuestion;
  throw new UsageError(wrong({ family, kinds }), right);
}

export const FAMILY_NAMES: readonly string[] = families.map(({ id }) => id);

/** Prints a fresh question as JSON. */
export async function printQuestion(options: AskOptions, io: Io): Promise<void> {
  const { ask: said } = io.words;
  const seed = options.seed ?? io.freshSeed();
  const size = wholeNumber(io, '--size', options.size, { low: 1, high: 8, example: 3 });
  const family = options.family ?? 'status-pair';
  if (!families.some(({ id }) => id === family)) {
    throw new UsageError(said.noFamily(family), said.families(FAMILY_NAMES));
  }
  const kind = questionKind.safeParse(options.kind);
  if (options.kind !== undefined && !kind.success) {
    throw new UsageError(said.noKind.wrong(options.kind), said.noKind.right(questionKind.options));
  }
  const kinds = kind.success ? [kind.data] : questionKind.options;
  const question = options.skill
    ? await fromSkill(io, options, options.skill, seed)
    : fromFamily(io, family, kinds, size, seed);
  const shown = { question, asked: tellQuestion(await coreWordsOf(io), askQuestion(question)) };
  io.out(JSON.stringify(options.withAnswer ? { ...shown, answer: rightAnswer(question) } : shown, null, 2));
}
