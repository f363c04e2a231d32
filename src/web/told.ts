import type { FirstWords } from '../words/en/page/first.ts';
import { words } from './words.ts';

/** An error that is for a person: said when it is read, for it may be made before the words are there. */
export class Told extends Error {
  private readonly say: (first: FirstWords) => string;

  constructor(say: (first: FirstWords) => string) {
    super();
    this.say = say;
  }

  override get message(): string {
    return this.say(words('first'));
  }
}
