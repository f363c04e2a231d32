import type { ProofSource } from '../../shared/issued.ts';
import type { Recall, SkillAnswer } from '../../shared/memory.ts';
import type { AnswerLine, AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import type { Settings } from '../../shared/settings.ts';
import type { StoreWords } from '../words/en/store.ts';
import type { Words } from '../words/index.ts';
import type { StatementOf } from '../words/statement.ts';
import type { HomeworkStore } from './homework/index.ts';
import type { IssuedQuestions } from './issued-questions.ts';
import type { People } from './people/index.ts';
import type { UnreadableSaid } from './record-text.ts';
import type { Whose } from './whose.ts';

/** What became of an answer: kept now, or there already; either way on the disk, under this number. */
export interface Kept {
  readonly kept: boolean;
  readonly number: number;
}

interface Entry {
  /** Order of arrival within the learner, from 1, without gaps. */
  readonly number: number;
  readonly id: string;
  /** When it was kept, milliseconds since 1970 by this machine's clock; 0 where that wasn't noted yet. */
  readonly arrivedAt: number;
}

/** What whoever keeps an answer makes of it, where that isn't what its record says. */
export interface Found {
  readonly mark: Mark;
  readonly circuit: string;
  /** As the record has it unless it is given. */
  readonly secondsExpected?: number;
}

/** What makes an answer a proof of what its learner can do. */
export interface Proof {
  readonly source: ProofSource;
  /** When it counts as given. */
  readonly at: number;
  /** The issued question that it uses up. Where that was used up by another answer, this one proves nothing. */
  readonly issued?: string;
}

/** A line of a history that proves something. */
export interface ProvingLine extends SkillAnswer {
  readonly source: ProofSource;
}

/** An answer that proves something, as it counts: with the mark, the circuit and the moment that hold. */
export interface ProvingAnswer {
  readonly record: AnswerRecord;
  readonly source: ProofSource;
}

/** An answer as kept. One that an older or a later version wrote may be unreadable; its text is still there. */
export type AnswerEntry =
  | (Entry & { readonly kind: 'answer'; readonly record: AnswerRecord; readonly correctedMark: Mark | null })
  | (Entry & { readonly kind: 'unreadable'; readonly why: UnreadableSaid });

export interface EntryPage {
  /** Names the history; null when nothing was ever kept. After erasing there is a new one. */
  readonly history: string | null;
  /** The highest number. */
  readonly last: number;
  readonly entries: readonly AnswerEntry[];
}

/** Answers in short. */
export interface LinePage {
  readonly history: string | null;
  readonly last: number;
  /** How often marks in this history were corrected: with another number than before, lines fetched before are out of date. */
  readonly corrections: number;
  readonly lines: readonly AnswerLine[];
}

/** The memory of a learner at one moment. */
export interface StandingOf {
  readonly history: string | null;
  /** The number of the last answer that the states follow from. */
  readonly last: number;
  /** By skill; a skill that is not in it is new. */
  readonly recalls: ReadonlyMap<string, Recall>;
}

export interface LearnerSummary {
  readonly learner: string;
  readonly answers: number;
}

/** Something in the store that isn't as it should be. */
export interface Fault {
  readonly learner: string | null;
  readonly fault: StatementOf<StoreWords['faults']>;
}

/** Told after each learner in work that goes through all of them. */
export type Progress = (done: number, total: number) => void;

export interface Corrected {
  /** Answers marked again. */
  readonly marked: number;
  /** Those whose mark is another one than before. */
  readonly changed: readonly { readonly learner: string; readonly number: number; readonly id: string }[];
  /** Those that couldn't be read or marked. */
  readonly left: number;
}

/**
 * What is kept. Answers are append-only and are the truth; recall states follow from them and are kept only so that
 * they needn't be worked out each time. Everything may be called by several programs at once. What goes wrong with the
 * database itself is thrown; `failureOf` says what it was in words.
 */
export interface Store {
  readonly kind: 'sqlite' | 'postgres';
  /** People and classes, where people sign in. */
  readonly people: People;
  /** Sets, papers, what was saved, and marks. */
  readonly homework: HomeworkStore;
  /**
   * Keeps answers and the recall states that follow, all or none; when it returns, they are on the disk. Each counts
   * once by its id and its learner, also when it is sent twice at the same moment; the first one stays.
   *
   * @param found - by record; the memory follows it, and the record stays as it is
   * @param proofs - by record: those that prove something
   * @param whose - anybody's unless it is given
   * @returns a result for each record, in their order
   * @throws NoSuchPerson when they are a person's who isn't there any more; then none is kept
   */
  keepAnswers(
    records: readonly AnswerRecord[],
    found?: ReadonlyMap<AnswerRecord, Found>,
    proofs?: ReadonlyMap<AnswerRecord, Proof>,
    whose?: Whose,
  ): Promise<readonly Kept[]>;
  /**
   * Keeps one answer, as `keepAnswers` does.
   *
   * @returns false when an answer with this id is kept already; nothing is changed then
   */
  keepAnswer(record: AnswerRecord): Promise<boolean>;
  /** All answers of a learner that can be read, in the order in which they arrived. */
  answersOf(learner: string): Promise<readonly AnswerRecord[]>;
  /** What of a learner's history proves something, in the order in which it arrived. */
  proofsOf(learner: string): Promise<readonly ProvingLine[]>;
  /** Those on these circuits, whole, in the same order; those that can't be read are left out. */
  provingAnswersOf(learner: string, circuits: readonly string[]): Promise<readonly ProvingAnswer[]>;
  /** Circuits that a learner has answered, or had on a paper. */
  circuitsSeenBy(learner: string): Promise<ReadonlySet<string>>;
  readonly issued: IssuedQuestions;
  /** Answers with a number above `after`, in order, at most `limit` of them. */
  entriesAfter(learner: string, after: number, limit: number): Promise<EntryPage>;
  /**
   * The same in short, as they count: at the moment that counts, on the circuit and with the mark that hold. Also of those whose
   * record can't be read.
   */
  linesAfter(learner: string, after: number, limit: number): Promise<LinePage>;
  /** The recall states of a learner, and which answers they follow from. */
  standingOf(learner: string): Promise<StandingOf>;
  /** The recall states of a learner by skill; a skill that is not in it is new. */
  recallsOf(learner: string): Promise<ReadonlyMap<string, Recall>>;
  /** Replaces the recall states of a learner, when they have been worked out again from the answers. */
  replaceRecalls(learner: string, recalls: ReadonlyMap<string, Recall>): Promise<void>;
  /** Works out the recall states of a learner anew from the answers, in the order of their time. */
  rebuildRecalls(learner: string): Promise<void>;
  /** What the learner has set; where nothing was set, or it can't be read any more, the settings that say so. */
  settingsOf(learner: string): Promise<Settings>;
  /**
   * Sets it: of each field what was changed last. A change dated in the future counts as made now.
   *
   * @returns what holds afterwards
   */
  putSettings(learner: string, settings: Settings, whose?: Whose): Promise<Settings>;
  /** Everyone of whom something is kept, by name. */
  learners(): Promise<readonly LearnerSummary[]>;
  /** Everything kept about one learner, as the text of one JSON value (`learnerExport` of shared/api.ts) in pieces. */
  exportOf(learner: string, words: Words): AsyncIterable<string>;
  /**
   * Erases everything about one learner for good, the person included; docs/backup.md says what that means on each
   * database.
   */
  erase(learner: string): Promise<{ readonly answers: number }>;
  /** Erases what one learner has practised and set. The person stays, with classes and homework. */
  erasePractice(learner: string): Promise<{ readonly answers: number }>;
  /** Erases a class with its homework for good. Its people stay, with what they have practised. */
  eraseClass(id: string): Promise<void>;
  /**
   * Marks every answer again and notes the marks that come out otherwise beside the records, which stay as they are;
   * recall states follow the new marks.
   *
   * @param markAgain - null when it can't be marked
   */
  correctMarks(markAgain: (record: AnswerRecord) => Mark | null, progress?: Progress): Promise<Corrected>;
  /**
   * Gives every history a new name and ends all sessions and links, after a backup was put back by other means than
   * `backup`'s: devices see that and send again what they have, and what was revoked since doesn't come back.
   */
  renameHistories(): Promise<void>;
  /** Looks through everything; finds nothing when all is well. Changes nothing. */
  check(progress?: Progress): Promise<readonly Fault[]>;
  /** Resolves when the database answers, throws when it doesn't. */
  ping(): Promise<void>;
  /**
   * Copies the whole store into one new file while it is being used; the copy is the store of one moment. SQLite only:
   * PostgreSQL has its own tools (docs/backup.md), and there it throws.
   *
   * @param signal - ends it; then nothing of the copy is left, and what it was ended with is thrown
   */
  backup(file: string, progress?: Progress, signal?: AbortSignal): Promise<void>;
  close(): Promise<void>;
}
