import { useState } from 'preact/hooks';
import { ApiFailure, call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { guardAgain } from '../../../guard.ts';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import type { PaperSession } from './paper-session.ts';

/** Which items are left, in plain words. */
function Left({ session }: { session: PaperSession }) {
  const w = words('homework').paper.handingIn;
  const answered = session.answered.value;
  const numbersOf = (wanted: 'none' | 'part'): number[] =>
    answered.flatMap((how, item) => (how === wanted ? [item + 1] : []));
  const none = numbersOf('none');
  const part = numbersOf('part');
  if (none.length + part.length === 0) return <p>{w.all}</p>;
  if (none.length === answered.length) return <p>{w.none}</p>;
  return (
    <>
      {none.length > 0 && <p>{w.without(none)}</p>}
      {part.length > 0 && <p>{w.inPart(part)}</p>}
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
  const w = words('homework').paper.over;
  const { submittedAt, paper } = session.view.value;
  return (
    <section class="over" role="status">
      <h2>{submittedAt === null ? w.closed : w.handedIn}</h2>
      <p>{submittedAt === null ? w.closedOn(paper.closesAt) : w.handedInOn(submittedAt)}</p>
      {mayReview || closed ? (
        <p>
          <a class="button main" href={addressOf({ at: 'review', paper: session.id, item: null })}>
            {w.seeMarks}
          </a>
        </p>
      ) : (
        <p>{w.later}</p>
      )}
    </section>
  );
}

/** Handing a paper in: first what is left, then once more whether that is meant. */
export function HandIn({ session, outbox }: { session: PaperSession; outbox: Outbox }) {
  const w = words('homework').paper.handingIn;
  const [sure, setSure] = useState(false);
  const [mayReview, setMayReview] = useState(false);
  const { busy, failure, run } = useAct();
  const { paper, submittedAt } = session.view.value;
  const closed = outbox.now() >= paper.closesAt;
  if (submittedAt !== null || !session.open())
    return <Over session={session} mayReview={mayReview} closed={closed} />;
  const handIn = async (): Promise<void> => {
    const sent = await outbox.flush();
    if (sent === 'later') throw new Error(w.noNetwork);
    if (sent === 'signed-out') throw new Error(w.signedOut);
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
      <h2 id="hand-in">{w.title}</h2>
      <Left session={session} />
      {sure ? (
        <div class="row">
          <Button kind="main" busy={busy} meanwhile={w.busy} onPress={() => run(handIn)}>
            {w.now}
          </Button>
          <Button kind="plain" onPress={() => setSure(false)}>
            {w.goOn}
          </Button>
        </div>
      ) : (
        <Button onPress={() => setSure(true)}>{w.handIn}</Button>
      )}
      <Refused words={failure} />
    </section>
  );
}
