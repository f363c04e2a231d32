import { useEffect, useState } from 'preact/hooks';
import type { LearnerSet } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { fromServerOrDevice } from '../../../local/homework/server-or-device.ts';
import { openHomework } from '../../../open-homework.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { openText } from '../../../tell-homework.ts';
import { set as elements, words } from '../../../words.ts';
import { addressOf, goTo } from '../homework-route.ts';
import { leftOf } from '../moments.ts';
import { Head } from '../parts/head.tsx';
import { savingText } from './keeping.tsx';

type Attempt = LearnerSet['attempts'][number];

async function fetchList(outbox: Outbox): Promise<{ sets: readonly LearnerSet[]; kept: boolean }> {
  const { kept, person } = outbox;
  const list = await fromServerOrDevice(
    (signal) => call('myHomework', signal ? { signal } : {}),
    kept.list(person),
  );
  if (list.from === 'device') return { sets: list.value, kept: true };
  await kept.keepList(person, list.value.sets);
  openHomework.value = openText(list.value.sets);
  return { sets: list.value.sets, kept: false };
}

/** How one attempt stands, and the way to it. */
function AttemptLine({ attempt, set, several }: { attempt: Attempt; set: LearnerSet; several: boolean }) {
  const w = words('homework').mine;
  const { paper, submittedAt, mayReview, total } = attempt;
  const closed = set.state === 'closed';
  return (
    <p>
      {w.attempt({ number: several ? attempt.attempt : undefined, submittedAt, closed, total })}{' '}
      {mayReview ? (
        <a href={addressOf({ at: 'review', paper, item: null })}>{w.lookThrough}</a>
      ) : submittedAt !== null || closed ? (
        <span class="quiet">{reviewText(set)}</span>
      ) : null}
    </p>
  );
}

/** When a marked paper may be looked through. */
function reviewText({ review, closesAt, state }: LearnerSet): string {
  const w = words('homework').mine;
  if (review === 'never') return w.withTutor;
  return state === 'closed' ? w.beingMarked : w.marksFrom(closesAt);
}

/** When it opens or closes. */
function Times({ set, now }: { set: LearnerSet; now: number }) {
  const w = words('homework').mine;
  if (set.state === 'before') return <p>{w.opens(set)}</p>;
  if (set.state === 'closed') return <p>{w.closed(set.closesAt)}</p>;
  return (
    <p>
      {elements(w.openUntil({ closesAt: set.closesAt, time: leftOf(set.closesAt - now) }), {
        strong: (text) => <strong>{text}</strong>,
      })}
    </p>
  );
}

function SetEntry({ set, now, outbox }: { set: LearnerSet; now: number; outbox: Outbox }) {
  const w = words('homework').mine;
  const { busy, failure, run } = useAct();
  const { attempts, state } = set;
  const going = attempts.find(({ submittedAt }) => submittedAt === null);
  const [answered, setAnswered] = useState<number>();
  useEffect(() => {
    if (!going || state !== 'open') return;
    outbox.kept.paper(outbox.person, going.paper).then(
      (view) => setAnswered(view && new Set(view.saved.map(({ item }) => item)).size),
      () => undefined,
    );
  }, [outbox, going, state]);
  const begin = async (): Promise<void> => {
    const view = await call('beginPaper', { params: { set: set.id } });
    outbox.hear(view.now);
    await outbox.kept.keepPaper(outbox.person, view);
    goTo({ at: 'paper', paper: view.id, item: 1 });
  };
  return (
    <li class="set-entry">
      <h3>{set.title}</h3>
      <p class="quiet">
        {w.about({
          classTitle: set.classTitle,
          items: set.items,
          marks: set.outOf,
          help: set.help,
          attempts: set.attemptsAllowed,
        })}
      </p>
      <Times set={set} now={now} />
      {attempts.map((attempt) => (
        <AttemptLine key={attempt.paper} attempt={attempt} set={set} several={set.attemptsAllowed > 1} />
      ))}
      {state === 'closed' && attempts.length === 0 && <p>{w.nothingHandedIn}</p>}
      {going && state === 'open' && answered !== undefined && (
        <p>{w.answered({ answered, count: set.items })}</p>
      )}
      {state === 'open' && going ? (
        <p>
          <a class="button main" href={addressOf({ at: 'paper', paper: going.paper, item: null })}>
            {w.goOn}
          </a>
        </p>
      ) : set.mayBegin ? (
        <p>
          <Button kind="main" busy={busy} meanwhile={w.beginning} onPress={() => run(begin)}>
            {attempts.length > 0 ? w.beginAnother : w.begin}
          </Button>
        </p>
      ) : null}
      <Refused words={failure} />
    </li>
  );
}

const GROUPS = ['open', 'before', 'closed'] as const;

/** What is left of the open sets, in one line. */
function todoText(sets: readonly LearnerSet[]): string {
  const w = words('homework').mine;
  const open = sets.filter(({ state }) => state === 'open');
  // A further attempt that was begun is there to be handed in as well.
  const left = open.filter(
    ({ attempts }) => attempts.length === 0 || attempts.some(({ submittedAt }) => submittedAt === null),
  );
  if (open.length === 0) return w.nothingOpen;
  if (left.length === 0) return w.allHandedIn;
  return w.toHandIn(left.length);
}

/** A learner's homework: what is open first, then what comes, then what is over. */
export function MyHomework({ outbox }: { outbox: Outbox }) {
  const { fetched, again } = useFetched(outbox.person, () => fetchList(outbox));
  const { mine: w, common, paper } = words('homework');
  const now = outbox.now();
  const saving = savingText(outbox);
  return (
    <div class="homework">
      <Show of={fetched} again={again}>
        {({ sets, kept }) => (
          <>
            <Head
              title={common.homework}
              cells={[todoText(sets), saving === paper.keeping.saved ? '' : saving]}
            />
            {kept && <p role="status">{w.asItStood}</p>}
            {sets.length === 0 && <p>{w.none}</p>}
            {GROUPS.map((state) => {
              const those = sets.filter((set) => set.state === state);
              return those.length === 0 ? null : (
                <section key={state}>
                  <h2>{w.groups[state]}</h2>
                  <ul class="set-list">
                    {those.map((set) => (
                      <SetEntry key={set.id} set={set} now={now} outbox={outbox} />
                    ))}
                  </ul>
                </section>
              );
            })}
          </>
        )}
      </Show>
    </div>
  );
}
