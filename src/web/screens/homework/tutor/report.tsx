import type { PaperRow, SetReport } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { skillWritten } from '../../../parts/written.tsx';
import type { Ground } from '../../../start.ts';
import { set as elements, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import type { Concern } from '../parts/types.ts';
import { Ideas } from './ideas.tsx';
import { ItemAnalysis } from './item-analysis.tsx';
import { namesOf } from './names.ts';
import { SkillGrid } from './skill-grid.tsx';
import { stateText } from './words.ts';

/** Why to speak to somebody, in words. */
export function concernText(concern: Concern): string {
  const w = words('sets').report.lookAfter.concern;
  switch (concern.kind) {
    case 'nothing-handed-in':
      return w.nothingHandedIn;
    case 'half-left-out':
      return w.halfLeftOut(concern);
    case 'low-marks':
      return w.lowMarks(concern.share);
    case 'firm-idea':
      return w.firmIdea(concern);
  }
}

function LookAfter({ report: { report, people } }: { report: SetReport }) {
  const w = words('sets').report.lookAfter;
  const nameOf = namesOf(people);
  if (report.lookAfter.length === 0) return null;
  const absent = report.lookAfter.filter(({ concerns }) =>
    concerns.every(({ kind }) => kind === 'nothing-handed-in'),
  );
  const others = report.lookAfter.filter((each) => !absent.includes(each));
  return (
    <section>
      <h2>{w.title}</h2>
      <ul class="set-list">
        {others.map(({ learner, concerns }) => (
          <li key={learner}>
            {elements(w.why, {
              name: <strong>{nameOf(learner)}</strong>,
              concerns: w.concerns(concerns.map(concernText)),
            })}
          </li>
        ))}
        {absent.length > 0 && (
          <li>
            {elements(w.absent, {
              names: <strong>{w.names(absent.map(({ learner }) => nameOf(learner)))}</strong>,
            })}
          </li>
        )}
      </ul>
    </section>
  );
}

/** Circuits of papers that were to be marked or run elsewhere while the papers were open. They weren't. */
function Tried({ set, papers }: { set: string; papers: readonly PaperRow[] }) {
  const w = words('sets').papers.tried;
  const tried = papers.filter((row) => row.tried > 0);
  if (tried.length === 0) return null;
  return (
    <section>
      <h2>{w.title}</h2>
      <p class="quiet">{w.ofAll}</p>
      <ul class="set-list">
        {tried.map((row) => (
          <li key={row.id}>
            {elements(w.by({ items: row.tried, attempt: row.attempt }), {
              name: row.total ? (
                <a class="onward" href={addressOf({ at: 'marked', set, paper: row.id, item: null })}>
                  {row.name}
                </a>
              ) : (
                <strong>{row.name}</strong>
              ),
            })}
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
  const { report: w, common } = words('sets');
  const nameOf = namesOf(people);
  const paperOf = (learner: string): PaperRow | undefined =>
    papers.findLast((row) => row.learner === learner && row.total !== null);
  if (report.skills.length === 0) return null;
  return (
    <SkillGrid
      caption={w.skills.caption}
      rows={common.learner}
      columns={[
        { key: 'total', title: w.skills.all },
        ...report.skills.map(({ skill, title }) => ({ key: skill, title, written: skillWritten(skill) })),
      ]}
      lines={report.rows.map(({ learner, stands, total, shares }) => {
        const paper = paperOf(learner);
        const name = nameOf(learner);
        return {
          key: learner,
          name: paper ? (
            <a href={addressOf({ at: 'marked', set: set.id, paper: paper.id, item: null })}>{name}</a>
          ) : (
            elements(w.skills.stands[stands], { name, so: (text) => <span class="stands-so">{text}</span> })
          ),
          shares: [total?.share ?? null, ...shares],
        };
      })}
      mean={{
        name: w.skills.mean,
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
  const { report: w, common } = words('sets');
  const { fetched, again } = useFetched(set, async () => {
    const [report, { papers }] = await Promise.all([
      call('homeworkReport', { params: { set } }),
      call('homeworkPapers', { params: { set } }),
    ]);
    return { report, papers };
  });
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting={w.marking}>
        {({ report, papers }) => (
          <>
            <Head
              title={report.set.title}
              cells={[w.report, w.handedIn(report.report), stateText(report.state, report.set)]}
            />
            {report.waiting > 0 && (
              <p role="status" class="row">
                <span>{w.waiting(report.waiting)}</span>
                <Button kind="plain" onPress={again}>
                  {common.lookAgain}
                </Button>
              </p>
            )}
            <LookAfter report={report} />
            <Tried set={set} papers={papers} />
            {report.report.handedIn === 0 ? (
              <p>{report.waiting > 0 ? w.allWaiting : report.state === 'closed' ? w.nobody : w.nobodyYet}</p>
            ) : (
              <>
                <Skills report={report} papers={papers} />
                <Ideas ground={ground} report={report} />
                <ItemAnalysis bank={ground.bank} report={report.report} />
              </>
            )}
            <p class="row">
              <a href={addressOf({ at: 'set', set })}>{common.backToSet}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
