import type { PageWords } from '../words/pages.ts';
import { words } from './words.ts';

/** An error that is for a person: said when it is read, for it may be made before the words are there. */
export class PageError extends Error {
  private readonly say: (first: PageWords['first']) => string;

  constructor(say: (first: PageWords['first']) => string) {
    super();
    this.say = say;
  }

  override get message(): string {
    return this.say(words('first'));
  }
}
