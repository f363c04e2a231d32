/** The outbox of whoever is signed in on this device, opened once. */
import { ApiFailure, call } from '../../../api.ts';
import { homeworkWaiting } from '../../../homework-waiting.ts';
import { signedOut } from '../../../me.ts';
import { KeptHomework } from './database.ts';
import { Outbox } from './outbox.ts';
import type { Post } from './send.ts';

/** Refusals after which the same may be taken later. */
const LATER: ReadonlySet<string> = new Set([
  'too-many-tries',
  'too-busy',
  'stopping',
  'store-unavailable',
  'internal-fault',
  'too-slow',
]);

/** Milliseconds after which a network that says nothing is as good as none. */
const PATIENCE = 20_000;

const post: Post = async (paper, batch) => {
  try {
    const signal = AbortSignal.timeout(PATIENCE);
    return {
      kind: 'results',
      results: await call('saveAnswers', { params: { paper }, body: batch, signal }),
    };
  } catch (error) {
    if (!(error instanceof ApiFailure) || error.code === null || LATER.has(error.code))
      return { kind: 'later' };
    if (error.code === 'sign-in-first') return { kind: 'signed-out' };
    return { kind: 'refused', code: error.code, message: error.message };
  }
};

let opening: Promise<KeptHomework> | undefined;
let open: Promise<Outbox> | undefined;
let whose: string | undefined;

/** @throws Error with words for a person where the browser keeps nothing */
export function outboxOf(person: string): Promise<Outbox> {
  if (open && whose === person) return open;
  opening ??= KeptHomework.open();
  whose = person;
  open = opening.then((kept) => {
    const made = new Outbox(kept, person, post);
    made.start();
    made.waiting.subscribe((count) => {
      homeworkWaiting.value = count;
    });
    // Somebody has signed in again: what waited meanwhile goes.
    signedOut.subscribe((out) => {
      if (!out) made.flush().catch(() => undefined);
    });
    return made;
  });
  return open;
}
