/** The outbox of whoever is signed in on this device, opened once. */
import { homeworkWaiting } from '../../homework-waiting.ts';
import { signedOut } from '../../me.ts';
import { KeptHomework } from './kept-homework.ts';
import { Outbox } from './outbox.ts';
import { postWithin } from './post.ts';

/** Milliseconds after which a network that says nothing is as good as none. */
const PATIENCE = 60_000;

let opening: Promise<KeptHomework> | undefined;
let open: Promise<Outbox> | undefined;
let whose: string | undefined;

/** @throws Error with words for a person where the browser keeps nothing */
export function outboxOf(person: string): Promise<Outbox> {
  if (open && whose === person) return open;
  opening ??= KeptHomework.open();
  whose = person;
  open = opening.then((kept) => {
    const made = new Outbox(kept, person, postWithin(PATIENCE));
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
