import { useState } from 'preact/hooks';
import type { Bank } from '../../../../../shared/bank.ts';
import type { SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { whenText } from '../../../moments.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { Schedule } from '../../../parts/schedule.tsx';
import { SkillTitle } from '../../../parts/written.tsx';
import { words } from '../../../words.ts';
import { addressOf, goTo } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { CloseLater } from './close-later.tsx';
import { Downloads } from './downloads.tsx';
import { Papers } from './papers.tsx';
import { Prepare } from './prepare.tsx';
import { reportsOn } from './reports.tsx';
import { stateText } from './words.ts';

const titlesOf = ({ topics }: Bank): ReadonlyMap<string, string> =>
  new Map(topics.flatMap(({ skills }) => skills.map(({ id, title }) => [id, title])));

function Facts({ view }: { view: SetView }) {
  const { states, one } = words('sets');
  const w = one.facts;
  const { set, wish } = view;
  const facts = [
    [w.opens, whenText(set.opensAt)],
    [w.closes, whenText(set.closesAt)],
    [w.size, states.levels[wish.level]],
    [w.attempts, set.attempts === 1 ? w.oneAttempt : w.several[set.counts](set.attempts)],
    [w.help, states.help[set.help]],
    [w.review, states.review[set.review]],
    [w.supervision, set.supervised ? w.supervised : w.notSupervised],
  ] as const;
  return (
    <dl class="facts">
      {facts.map(([what, how]) => (
        <div key={what}>
          <dt>{what}</dt>
          <dd>{how}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The places of the set, as a list of parts. */
function PlaceSchedule({ view, bank }: { view: SetView; bank: Bank }) {
  const w = words('sets').one.places;
  const titles = titlesOf(bank);
  return (
    <details class="in-words" open={view.state === 'draft'}>
      <summary>{w.title}</summary>
      <Schedule
        class="schedule"
        rows={view.set.places}
        keyOf={({ skill }, at) => `${at} ${skill}`}
        columns={[
          { title: w.place, like: 'number', cell: (_, at) => at + 1 },
          {
            title: w.skill,
            head: true,
            cell: ({ skill }) => <SkillTitle skill={skill} title={titles.get(skill) ?? skill} />,
          },
          { title: w.askedFor, cell: ({ kind }) => w.kind(kind) },
          { title: w.hard, minor: true, like: 'number', cell: ({ difficulty }) => w.difficulty(difficulty) },
          { title: w.marks, minor: true, like: 'number', cell: ({ marks }) => marks },
        ]}
      />
    </details>
  );
}

/** Erasing a draft, or withdrawing what was issued: asked once more. */
function Withdraw({ view }: { view: SetView }) {
  const { one, common } = words('sets');
  const w = one.withdraw;
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
          <Button busy={busy} onPress={() => run(act)}>
            {draft ? w.draftSure : w.issuedSure}
          </Button>
          <Button kind="plain" onPress={() => setSure(false)}>
            {common.leaveIt}
          </Button>
        </span>
      ) : (
        <Button kind="plain" onPress={() => setSure(true)}>
          {draft ? w.draft : w.issued}
        </Button>
      )}
      <Refused words={failure} />
    </>
  );
}

function DraftActs({ view, onIssued }: { view: SetView; onIssued: (view: SetView) => void }) {
  const { one: w } = words('sets');
  const [sure, setSure] = useState(false);
  const { busy, failure, run } = useAct();
  const { id } = view.set;
  return (
    <>
      <div class="row">
        {sure ? null : (
          <Button kind="main" onPress={() => setSure(true)}>
            {w.issue.ask}
          </Button>
        )}
        <a class="button" href={addressOf({ at: 'sample', set: id, number: 1 })}>
          {w.sample.link}
        </a>
        <a href={addressOf({ at: 'change', set: id })}>{w.change}</a>
        <Withdraw view={view} />
      </div>
      {sure && (
        <section class="sure" aria-labelledby="issuing">
          <h2 id="issuing">{w.issue.title(view.set.title)}</h2>
          <p>{view.set.opensAt <= Date.now() ? w.issue.now(view.set.closesAt) : w.issue.later(view.set)}</p>
          <div class="row">
            <Button
              kind="main"
              busy={busy}
              meanwhile={w.issue.busy}
              onPress={() => run(async () => onIssued(await call('issueHomework', { params: { set: id } })))}
            >
              {w.issue.sure}
            </Button>
            <Button kind="plain" onPress={() => setSure(false)}>
              {w.issue.back}
            </Button>
          </div>
        </section>
      )}
      <Refused words={failure} />
    </>
  );
}

function Issued({ view, onMoved }: { view: SetView; onMoved: (view: SetView) => void }) {
  const { one: w } = words('sets');
  const { id } = view.set;
  const [round, setRound] = useState(0);
  return (
    <>
      <div class="row">
        {reportsOn('set').map(({ name, title }, at) => (
          <a
            key={name}
            class={at === 0 ? 'button main' : 'button'}
            href={addressOf({ at: 'report', report: name, of: id })}
          >
            {title()}
          </a>
        ))}
        <a class="button" href={addressOf({ at: 'sample', set: id, number: 1 })}>
          {w.sample.link}
        </a>
        <a href={addressOf({ at: 'typed', set: id })}>{w.typeMarks}</a>
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
  const { one: w } = words('sets');
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
                w.items(view.set.places.length),
                w.marks(view.set.places.reduce((sum, { marks }) => sum + marks, 0)),
              ]}
            />
            {view.issuedAt === null ? (
              <DraftActs view={view} onIssued={put} />
            ) : (
              <Issued view={view} onMoved={put} />
            )}
            <Facts view={view} />
            <PlaceSchedule view={view} bank={bank} />
            <p>
              <a href={addressOf({ at: 'sets', class: view.class })}>{w.all}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
