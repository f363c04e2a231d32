import type { Course, IdeasLeft } from '../../practice/index.ts';
import type { AskingWords } from '../../words/index.ts';
import { MemoryKept } from './memory-kept.ts';

/** What the engine holds between requests: the bank and the memory. */
export class Opened {
  readonly memory = new MemoryKept();
  /** Circuits of papers that are open, by fingerprint: nothing of them is told here. */
  guarded: ReadonlySet<string> = new Set();
  /** By skill: two wrong ideas of which its last answer left both open. */
  readonly ideasLeft = new Map<string, IdeasLeft>();
  private opened: Course | undefined;
  /** What is told, in the language of whoever uses the page. */
  readonly words: AskingWords;

  constructor(words: AskingWords) {
    this.words = words;
  }

  set course(course: Course) {
    this.opened = course;
  }

  /** @throws RangeError before a bank has been opened */
  get course(): Course {
    if (!this.opened) throw new RangeError('no bank has been opened');
    return this.opened;
  }
}
