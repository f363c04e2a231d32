import { useState } from 'preact/hooks';
import type { Bank } from '../../../../../shared/bank.ts';
import type { SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { whenText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { addressOf, goTo } from '../where.ts';
import { CloseLater } from './close-later.tsx';
import { Downloads } from './downloads.tsx';
import { Papers } from './papers.tsx';
import { Prepare } from './prepare.tsx';
import { COUNTS, HELP, KINDS, LEVELS, REVIEW, stateText } from './words.ts';

const titlesOf = ({ topics }: Bank): ReadonlyMap<string, string> =>
  new Map(topics.flatMap(({ skills }) => skills.map(({ id, title }) => [id, title])));

function Facts({ view }: { view: SetView }) {
  const { set, wish } = view;
  return (
    <dl class="facts">
      <div>
        <dt>Opens</dt>
        <dd>{whenText(set.opensAt)}</dd>
      </div>
      <div>
        <dt>Closes</dt>
        <dd>{whenText(set.closesAt)}</dd>
      </div>
      <div>
        <dt>Size</dt>
        <dd>{LEVELS[wish.level]}</dd>
      </div>
      <div>
        <dt>Attempts</dt>
        <dd>{set.attempts === 1 ? 'One' : `${set.attempts}: ${COUNTS[set.counts].toLowerCase()}`}</dd>
      </div>
      <div>
        <dt>Help</dt>
        <dd>{HELP[set.help]}</dd>
      </div>
      <div>
        <dt>Marks and answers</dt>
        <dd>{REVIEW[set.review]}</dd>
      </div>
      <div>
        <dt>Supervision</dt>
        <dd>{set.supervised ? 'Sat under supervision' : 'None'}</dd>
      </div>
    </dl>
  );
}

/** The places of the set, as a list of parts. */
function Places({ view, bank }: { view: SetView; bank: Bank }) {
  const titles = titlesOf(bank);
  return (
    <details class="in-words" open={view.state === 'draft'}>
      <summary>What each place asks</summary>
      <table class="schedule">
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Skill</th>
            <th scope="col">Asked for</th>
            <th scope="col" class="minor">
              Hard
            </th>
            <th scope="col" class="minor">
              Marks
            </th>
          </tr>
        </thead>
        <tbody>
          {view.set.places.map(({ skill, kind, difficulty, marks }, at) => (
            <tr key={`${at} ${skill}`}>
              <td class="number">{at + 1}</td>
              <th scope="row">{titles.get(skill) ?? skill}</th>
              <td>{KINDS[kind]}</td>
              <td class="number minor">{difficulty.toFixed(1)}</td>
              <td class="number minor">{marks}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** Erasing a draft, or withdrawing what was issued: asked once more. */
function Withdraw({ view }: { view: SetView }) {
  const [sure, setSure] = useState(false);
  const { busy, failure, run } = useAct();
  const draft = view.state === 'draft';
  const act = async (): Promise<void> => {
    await call('withdrawHomework', { params: { set: view.set.id } });
    goTo({ at: 'sets', class: view.class });
  };
  if (view.state === 'withdrawn') return null;
  return (
    <>
      {sure ? (
        <span class="row">
          <button type="button" class="button" disabled={busy} onClick={() => run(act)}>
            {draft ? 'Erase it' : 'Withdraw it: learners no longer see it'}
          </button>
          <button type="button" class="button plain" onClick={() => setSure(false)}>
            Leave it
          </button>
        </span>
      ) : (
        <button type="button" class="button plain" onClick={() => setSure(true)}>
          {draft ? 'Erase the draft' : 'Withdraw'}
        </button>
      )}
      {failure && (
        <p class="refused" role="alert">
          {failure}
        </p>
      )}
    </>
  );
}

function DraftActs({ view, onIssued }: { view: SetView; onIssued: (view: SetView) => void }) {
  const [sure, setSure] = useState(false);
  const { busy, failure, run } = useAct();
  const { id } = view.set;
  return (
    <>
      <div class="row">
        {sure ? null : (
          <button type="button" class="button main" onClick={() => setSure(true)}>
            Issue to the class
          </button>
        )}
        <a class="button" href={addressOf({ at: 'sample', set: id, number: 1 })}>
          Sample paper
        </a>
        <a href={addressOf({ at: 'change', set: id })}>Change</a>
        <Withdraw view={view} />
      </div>
      {sure && (
        <section class="sure" aria-labelledby="issuing">
          <h2 id="issuing">Issue “{view.set.title}”?</h2>
          <p>
            {view.set.opensAt <= Date.now()
              ? 'Learners of the class see it, and may begin, at once.'
              : `Learners of the class see it at once, and may begin on ${whenText(view.set.opensAt)}.`}{' '}
            Once issued, it stays as it is: skills, items, marks, opening time, attempts, help, supervision
            and when marks are shown. It may close later than {whenText(view.set.closesAt)}, never earlier;
            and it can be withdrawn.
          </p>
          <div class="row">
            <button
              type="button"
              class="button main"
              disabled={busy}
              onClick={() => run(async () => onIssued(await call('issueHomework', { params: { set: id } })))}
            >
              {busy ? 'Issuing…' : 'Issue it as it is'}
            </button>
            <button type="button" class="button plain" onClick={() => setSure(false)}>
              Look at it again
            </button>
          </div>
        </section>
      )}
      {failure && (
        <p class="refused" role="alert">
          {failure}
        </p>
      )}
    </>
  );
}

function Issued({ view, onMoved }: { view: SetView; onMoved: (view: SetView) => void }) {
  const { id } = view.set;
  const [round, setRound] = useState(0);
  return (
    <>
      <div class="row">
        <a class="button main" href={addressOf({ at: 'report', set: id })}>
          Report
        </a>
        <a class="button" href={addressOf({ at: 'sample', set: id, number: 1 })}>
          Sample paper
        </a>
        <a href={addressOf({ at: 'typed', set: id })}>Type in marks from paper</a>
        <Withdraw view={view} />
      </div>
      {view.state !== 'withdrawn' && <Prepare set={id} onMade={() => setRound((before) => before + 1)} />}
      {(view.state === 'open' || view.state === 'before') && <CloseLater view={view} onMoved={onMoved} />}
      <Papers view={view} round={round} />
      <Downloads view={view} />
    </>
  );
}

/** One set: what it is, and everything that is done with it. */
export function SetScreen({ bank, set }: { bank: Bank; set: string }) {
  const { fetched, again, put } = useFetched(set, () => call('homework', { params: { set } }));
  return (
    <div class="homework wide">
      <Show of={fetched} again={again}>
        {(view) => (
          <>
            <Head
              title={view.set.title}
              cells={[
                stateText(view.state, view.set),
                `${view.set.places.length} items`,
                `${view.set.places.reduce((sum, { marks }) => sum + marks, 0)} marks`,
              ]}
            />
            {view.issuedAt === null ? (
              <DraftActs view={view} onIssued={put} />
            ) : (
              <Issued view={view} onMoved={put} />
            )}
            <Facts view={view} />
            <Places view={view} bank={bank} />
            <p>
              <a href={addressOf({ at: 'sets', class: view.class })}>All sets of the class</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
