import { useEffect, useState } from 'preact/hooks';
import type { LearnerSet } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { openHomework } from '../../../open-homework.ts';
import { useAct } from '../../../parts/act.ts';
import { orKept } from '../kept/or-kept.ts';
import type { Outbox } from '../kept/outbox.ts';
import { leftText, whenText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { openText } from '../tell-open.ts';
import { addressOf, goTo } from '../where.ts';
import { marksText } from './item-screen.tsx';
import { savingText } from './keeping.tsx';

type Attempt = LearnerSet['attempts'][number];

async function fetchList(outbox: Outbox): Promise<{ sets: readonly LearnerSet[]; kept: boolean }> {
  const { kept, person } = outbox;
  const list = await orKept((signal) => call('myHomework', signal ? { signal } : {}), kept.list(person));
  if (list.from === 'device') return { sets: list.value, kept: true };
  await kept.keepList(person, list.value.sets);
  openHomework.value = openText(list.value.sets);
  return { sets: list.value.sets, kept: false };
}

/** How one attempt stands, and the way to it. */
function AttemptLine({ attempt, set, several }: { attempt: Attempt; set: LearnerSet; several: boolean }) {
  const { paper, submittedAt, mayReview, total } = attempt;
  const name = several ? `Attempt ${attempt.attempt}: ` : '';
  const stands =
    submittedAt !== null
      ? `${name ? 'handed' : 'Handed'} in ${whenText(submittedAt)}`
      : set.state === 'closed'
        ? `${name ? 'not' : 'Not'} handed in; what was saved counts`
        : `${name ? 'begun' : 'Begun'}`;
  return (
    <p>
      {name}
      {stands}
      {total ? `, ${total.earned} of ${marksText(total.outOf)}` : ''}
      {'. '}
      {mayReview ? (
        <a href={addressOf({ at: 'review', paper, item: null })}>Look through</a>
      ) : submittedAt !== null || set.state === 'closed' ? (
        <span class="quiet">{reviewText(set)}</span>
      ) : null}
    </p>
  );
}

/** When a marked paper may be looked through. */
function reviewText({ review, closesAt, state }: LearnerSet): string {
  if (review === 'never') return 'Your tutor goes through it with you.';
  return state === 'closed' ? 'It is being marked.' : `Marks and answers from ${whenText(closesAt)}.`;
}

function helpText({ help, attemptsAllowed }: LearnerSet): string {
  return [
    help === 'hints' ? 'hints may be asked for' : 'no hints',
    attemptsAllowed === 1 ? 'one attempt' : `${attemptsAllowed} attempts`,
  ].join(', ');
}

function SetEntry({ set, now, outbox }: { set: LearnerSet; now: number; outbox: Outbox }) {
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
        {set.classTitle}: {set.items === 1 ? '1 item' : `${set.items} items`}, {marksText(set.outOf)},{' '}
        {helpText(set)}
      </p>
      {state === 'before' && (
        <p>
          Opens {whenText(set.opensAt)}, closes {whenText(set.closesAt)}.
        </p>
      )}
      {state === 'open' && (
        <p>
          Open until <strong>{whenText(set.closesAt)}</strong> ({leftText(set.closesAt - now)} left).
        </p>
      )}
      {state === 'closed' && <p>Closed {whenText(set.closesAt)}.</p>}
      {attempts.map((attempt) => (
        <AttemptLine key={attempt.paper} attempt={attempt} set={set} several={set.attemptsAllowed > 1} />
      ))}
      {state === 'closed' && attempts.length === 0 && <p>Nothing handed in.</p>}
      {going && state === 'open' && answered !== undefined && (
        <p>
          {answered} of {set.items} items have answers.
        </p>
      )}
      {state === 'open' && going ? (
        <p>
          <a class="button main" href={addressOf({ at: 'paper', paper: going.paper, item: null })}>
            Go on
          </a>
        </p>
      ) : set.mayBegin ? (
        <p>
          <button type="button" class="button main" disabled={busy} onClick={() => run(begin)}>
            {busy ? 'Drawing your paper…' : attempts.length > 0 ? 'Begin another attempt' : 'Begin'}
          </button>
        </p>
      ) : null}
      {failure && (
        <p class="refused" role="alert">
          {failure}
        </p>
      )}
    </li>
  );
}

const GROUPS = [
  ['open', 'Open'],
  ['before', 'Coming'],
  ['closed', 'Closed'],
] as const;

/** What is left of the open sets, in one line. */
function todoText(sets: readonly LearnerSet[]): string {
  const open = sets.filter(({ state }) => state === 'open');
  // A further attempt that was begun is there to be handed in as well.
  const left = open.filter(
    ({ attempts }) => attempts.length === 0 || attempts.some(({ submittedAt }) => submittedAt === null),
  );
  if (open.length === 0) return 'Nothing is open.';
  if (left.length === 0) return 'Everything that is open is handed in.';
  return left.length === 1 ? '1 set to hand in' : `${left.length} sets to hand in`;
}

/** A learner's homework: what is open first, then what comes, then what is over. */
export function MyHomework({ outbox }: { outbox: Outbox }) {
  const { fetched, again } = useFetched(outbox.person, () => fetchList(outbox));
  const now = outbox.now();
  return (
    <div class="homework">
      <Show of={fetched} again={again}>
        {({ sets, kept }) => (
          <>
            <Head
              title="Homework"
              cells={[todoText(sets), savingText(outbox) === 'Saved.' ? '' : savingText(outbox)]}
            />
            {kept && (
              <p role="status">
                There is no network: this is how it stood last. A paper that was begun on this device can be
                gone on with.
              </p>
            )}
            {sets.length === 0 && <p>No homework has been set for you.</p>}
            {GROUPS.map(([state, title]) => {
              const those = sets.filter((set) => set.state === state);
              return those.length === 0 ? null : (
                <section key={state}>
                  <h2>{title}</h2>
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
