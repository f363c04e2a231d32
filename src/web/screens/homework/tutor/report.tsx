import type { PaperRow, SetReport } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import type { Ground } from '../../../start.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import type { Concern } from '../parts/types.ts';
import { addressOf } from '../where.ts';
import { Ideas } from './ideas.tsx';
import { namesOf } from './names.ts';
import { Places } from './places.tsx';
import { SkillGrid } from './skill-grid.tsx';
import { stateText } from './words.ts';

/** Why to speak to somebody, in words. */
export function concernText(concern: Concern): string {
  switch (concern.kind) {
    case 'nothing-handed-in':
      return 'handed in nothing';
    case 'half-left-out':
      return `answered only ${concern.answered} of ${concern.items} items`;
    case 'low-marks':
      return `${Math.round(100 * concern.share)} % of the marks`;
    case 'firm-idea':
      return `one wrong idea ${concern.times} times: ${concern.idea}`;
  }
}

/** Why there are no figures of somebody. */
const STANDS = {
  marked: '',
  waiting: 'waiting to be marked',
  open: 'still open',
  nothing: 'nothing handed in',
};

function LookAfter({ report: { report, people } }: { report: SetReport }) {
  const nameOf = namesOf(people);
  if (report.lookAfter.length === 0) return null;
  const absent = report.lookAfter.filter(({ concerns }) =>
    concerns.every(({ kind }) => kind === 'nothing-handed-in'),
  );
  const others = report.lookAfter.filter((each) => !absent.includes(each));
  return (
    <section>
      <h2>Whom to look after</h2>
      <ul class="set-list">
        {others.map(({ learner, concerns }) => (
          <li key={learner}>
            <strong>{nameOf(learner)}</strong>: {concerns.map(concernText).join('; ')}.
          </li>
        ))}
        {absent.length > 0 && (
          <li>
            <strong>{absent.map(({ learner }) => nameOf(learner)).join(', ')}</strong>: handed in nothing.
          </li>
        )}
      </ul>
    </section>
  );
}

/** Circuits of papers that were to be marked or run elsewhere while the papers were open. They weren't. */
function Tried({ set, papers }: { set: string; papers: readonly PaperRow[] }) {
  const tried = papers.filter((row) => row.tried > 0);
  if (tried.length === 0) return null;
  return (
    <section>
      <h2>Tried elsewhere</h2>
      <p class="quiet">
        While the paper was open, circuits of it were put into practice, Try it or Write. They were not marked
        or run there. A marked paper says where and when.
      </p>
      <ul class="set-list">
        {tried.map((row) => (
          <li key={row.id}>
            {row.total ? (
              <a class="onward" href={addressOf({ at: 'marked', set, paper: row.id, item: null })}>
                {row.name}
              </a>
            ) : (
              <strong>{row.name}</strong>
            )}
            : {row.tried === 1 ? '1 item' : `${row.tried} items`}
            {row.attempt > 1 ? ` of attempt ${row.attempt}` : ''}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Skills({
  report: { report, people, set },
  papers,
}: {
  report: SetReport;
  papers: readonly PaperRow[];
}) {
  const nameOf = namesOf(people);
  const paperOf = (learner: string): PaperRow | undefined =>
    papers.findLast((row) => row.learner === learner && row.total !== null);
  if (report.skills.length === 0) return null;
  return (
    <SkillGrid
      caption="Skills by learners"
      rows="Learner"
      columns={[
        { key: 'total', title: 'All' },
        ...report.skills.map(({ skill, title }) => ({ key: skill, title })),
      ]}
      lines={report.rows.map(({ learner, stands, total, shares }) => {
        const paper = paperOf(learner);
        const name = nameOf(learner);
        return {
          key: learner,
          name: paper ? (
            <a href={addressOf({ at: 'marked', set: set.id, paper: paper.id, item: null })}>{name}</a>
          ) : (
            <>
              {name} <span class="stands-so">{STANDS[stands]}</span>
            </>
          ),
          shares: [total?.share ?? null, ...shares],
        };
      })}
      mean={{
        name: 'Mean of those who handed in',
        shares: [
          meanOf(report.rows.map(({ total }) => total?.share ?? null)),
          ...report.skills.map(({ share }) => share),
        ],
      }}
    />
  );
}

function meanOf(shares: readonly (number | null)[]): number | null {
  const known = shares.filter((share) => share !== null);
  return known.length === 0 ? null : known.reduce((sum, share) => sum + share, 0) / known.length;
}

/** What a set says of its class. */
export function Report({ ground, set }: { ground: Ground; set: string }) {
  const { fetched, again } = useFetched(set, async () => {
    const [report, { papers }] = await Promise.all([
      call('homeworkReport', { params: { set } }),
      call('homeworkPapers', { params: { set } }),
    ]);
    return { report, papers };
  });
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting="Marking and reckoning…">
        {({ report, papers }) => (
          <>
            <Head
              title={report.set.title}
              cells={[
                'Report',
                `${report.report.handedIn} of ${report.report.learners} handed in`,
                stateText(report.state, report.set),
              ]}
            />
            {report.waiting > 0 && (
              <p role="status" class="row">
                <span>
                  {report.waiting === 1
                    ? '1 paper is still to be marked; it is not in these figures.'
                    : `${report.waiting} papers are still to be marked; they are not in these figures.`}
                </span>
                <button type="button" class="button plain" onClick={again}>
                  Look again
                </button>
              </p>
            )}
            <LookAfter report={report} />
            <Tried set={set} papers={papers} />
            {report.report.handedIn === 0 ? (
              <p>
                {report.waiting > 0
                  ? 'What was handed in is still to be marked.'
                  : report.state === 'closed'
                    ? 'Nobody handed anything in.'
                    : 'Nobody has handed anything in yet.'}
              </p>
            ) : (
              <>
                <Skills report={report} papers={papers} />
                <Ideas ground={ground} report={report} />
                <Places bank={ground.bank} report={report.report} />
              </>
            )}
            <p class="row">
              <a href={addressOf({ at: 'set', set })}>Back to the set</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
