/**
 * What is said, in which language. The core makes statements; whoever shows them to a person says them by the words of a
 * language, which are an argument as time and seeds are. The English catalogue in `en/` defines what there is to say;
 * another language is another `Words`.
 */
import type { answering } from './en/answering.ts';
import type { AnswerSaid } from './en/answers.ts';
import type { asking } from './en/asking.ts';
import type { english } from './en/core.ts';
import type { server } from './en/server/index.ts';
import type { StatementOf } from './statement.ts';

export type { AnswerSaid } from './en/answers.ts';
export type { ActSaid, Ends, FaultSaid, Named, NamedSupply } from './en/circuit.ts';
export type {
  CaptionSaid,
  DescribedSaid,
  DrawingWords,
  Drawn as DrawnDevice,
  End,
  PathPlace,
  StopSaid,
  Stretch,
} from './en/drawing.ts';
export type { GradingSaid } from './en/grading.ts';
export type { Idea } from './en/ideas.ts';
export type { RatingSaid } from './en/lettering.ts';
export type { AskedThing } from './en/problems/bank-blocks.ts';
export type { FrontKey } from './en/problems/bank-files.ts';
export type { BankProblemSaid } from './en/problems/banks.ts';
export type { CircuitProblemSaid } from './en/problems/circuit.ts';
export type { HomeworkProblemSaid, InterchangeProblemSaid } from './en/problems/homework.ts';
export type { MemoryProblemSaid } from './en/problems/memory.ts';
export type { LackingSaid, OptionSaid } from './en/problems/notation.ts';
export type { QuestionProblemSaid } from './en/problems/questions.ts';
export type { LoadNamed, RuleProblemSaid } from './en/problems/rules.ts';
export type { FaultWord } from './en/problems/scenario.ts';
export type { ValueProblemSaid } from './en/problems/soundness.ts';
export type { CautionSaid, LabelSaid, Moment, SituationSaid } from './en/questions/asking.ts';
export type {
  ExplainingSaid,
  HintSaid,
  PointSaid,
  ReadingSaid,
  StandingSaid,
} from './en/questions/explaining.ts';
export type { ClosedSaid, Feed, FeedPart } from './en/questions/feeds.ts';
export type { Hop, PlaceSaid, Places, PositionSaid } from './en/questions/places.ts';
export type { ReasonSaid, UnfedSaid } from './en/questions/reasons.ts';
export type { Wanted } from './en/questions/wiring.ts';
export { type Said, type Saying, type Sayings, type StatementOf, say } from './statement.ts';

/** What has to be said to put a question, and once it stands there: what the page fetches of the core's words. */
export type AskingWords = typeof asking;
export type AnsweringWords = typeof answering;
/** What drawings are lettered with. */
export type Lettering = Pick<AskingWords, 'lettering'>;
/** Everything that the core and the server have to say, in one language. */
export type Words = typeof english;

/** Why the server refuses something. */
export type Refusal = StatementOf<(typeof server)['refusals']>;

/** Names of the states of things, `lit`. */
export type StateName = Exclude<
  AnswerSaid['says'],
  'volts' | 'pair' | 'choice' | 'written' | 'noNumber' | 'nothing'
>;
