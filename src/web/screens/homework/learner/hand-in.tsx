import { useState } from 'preact/hooks';
import { ApiFailure, call } from '../../../api.ts';
import { guardAgain } from '../../../guard.ts';
import { useAct } from '../../../parts/act.ts';
import type { Outbox } from '../kept/outbox.ts';
import { whenText } from '../moments.ts';
import { addressOf } from '../where.ts';
import type { PaperSession } from './paper-session.ts';

/** `3, 7 and 9`. */
const listed = (numbers: readonly number[]): string =>
  numbers.length < 2 ? numbers.join('') : `${numbers.slice(0, -1).join(', ')} and ${numbers.at(-1)}`;

/** Which items are left, in plain words. */
function Left({ session }: { session: PaperSession }) {
  const answered = session.answered.value;
  const numbersOf = (wanted: 'none' | 'part'): number[] =>
    answered.flatMap((how, item) => (how === wanted ? [item + 1] : []));
  const none = numbersOf('none');
  const part = numbersOf('part');
  if (none.length + part.length === 0) return <p>Every item is answered.</p>;
  if (none.length === answered.length) return <p>No item is answered yet.</p>;
  return (
    <>
      {none.length > 0 && (
        <p>
          Not answered: {none.length === 1 ? 'item' : 'items'} {listed(none)}.
        </p>
      )}
      {part.length > 0 && (
        <p>
          Answered in part: {part.length === 1 ? 'item' : 'items'} {listed(part)}. What is answered of{' '}
          {part.length === 1 ? 'it' : 'them'} counts.
        </p>
      )}
    </>
  );
}

/** After it has been handed in, or closed without. */
function Over({
  session,
  mayReview,
  closed,
}: {
  session: PaperSession;
  mayReview: boolean;
  closed: boolean;
}) {
  const { submittedAt, paper } = session.view.value;
  return (
    <section class="over" role="status">
      <h2>{submittedAt === null ? 'Closed' : 'Handed in'}</h2>
      <p>
        {submittedAt === null
          ? `The set closed on ${whenText(paper.closesAt)}. What was saved by then counts.`
          : `Handed in on ${whenText(submittedAt)}. Nothing can be changed any more.`}
      </p>
      {mayReview || closed ? (
        <p>
          <a class="button main" href={addressOf({ at: 'review', paper: session.id, item: null })}>
            See the marks
          </a>
        </p>
      ) : (
        <p>When it may be looked through, your homework says so.</p>
      )}
    </section>
  );
}

/** Handing a paper in: first what is left, then once more whether that is meant. */
export function HandIn({ session, outbox }: { session: PaperSession; outbox: Outbox }) {
  const [sure, setSure] = useState(false);
  const [mayReview, setMayReview] = useState(false);
  const { busy, failure, run } = useAct();
  const { paper, submittedAt } = session.view.value;
  const closed = outbox.now() >= paper.closesAt;
  if (submittedAt !== null || !session.open())
    return <Over session={session} mayReview={mayReview} closed={closed} />;
  const handIn = async (): Promise<void> => {
    const sent = await outbox.flush();
    if (sent === 'later')
      throw new Error(
        'There is no network just now. Your answers are kept on this device; hand in when it is back. What has arrived by the closing time counts either way.',
      );
    if (sent === 'signed-out') throw new Error('You are no longer signed in. Sign in again, then hand in.');
    const params = { paper: session.id };
    try {
      const done = await call('submitPaper', { params });
      setMayReview(done.mayReview);
      session.handedIn(done.submittedAt);
      guardAgain();
    } catch (error) {
      // It may have closed a moment ago, or been handed in from another device.
      if (error instanceof ApiFailure && error.code !== null) session.renew(await call('paper', { params }));
      throw error;
    }
  };
  return (
    <section class="hand-in" aria-labelledby="hand-in">
      <h2 id="hand-in">Handing in</h2>
      <Left session={session} />
      {sure ? (
        <div class="row">
          <button type="button" class="button main" disabled={busy} onClick={() => run(handIn)}>
            {busy ? 'Handing in…' : 'Hand in now, for good'}
          </button>
          <button type="button" class="button plain" onClick={() => setSure(false)}>
            Go on working
          </button>
        </div>
      ) : (
        <button type="button" class="button" onClick={() => setSure(true)}>
          Hand in
        </button>
      )}
      {failure && (
        <p class="refused" role="alert">
          {failure}
        </p>
      )}
    </section>
  );
}
