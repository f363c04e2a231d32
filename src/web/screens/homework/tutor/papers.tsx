import { useEffect, useRef } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { codeInGroups } from '../../../../homework/paper-code.ts';
import type { PaperStands } from '../../../../words/en/page/sets/papers.ts';
import { call } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { Schedule } from '../../../parts/schedule.tsx';
import { set, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { ShareCell } from '../parts/share-cell.tsx';

function standsOf({ begunAt, submittedAt, markedAt, saved }: PaperRow, closed: boolean): PaperStands {
  if (submittedAt !== null) return { kind: 'handed-in', at: submittedAt };
  if (markedAt !== null) return { kind: 'closed-with-answers' };
  if (closed) return { kind: saved > 0 ? 'closed-with-answers' : 'nothing-handed-in' };
  if (begunAt === null) return { kind: 'not-begun' };
  return saved === 0 ? { kind: 'begun' } : { kind: 'working', items: saved };
}

/** Everybody's papers in a schedule. */
function PaperSchedule({ view, papers }: { view: SetView; papers: readonly PaperRow[] }) {
  const { papers: w, common } = words('sets');
  const { id, attempts } = view.set;
  const closed = view.state === 'closed';
  const stands = (row: PaperRow) =>
    set(w.standsSo({ attempt: row.attempt, stands: standsOf(row, closed), tried: row.tried }), {
      attempt: (text) => <span class="narrow-only">{text}</span>,
      tried: (text) => <span class="tried">{text}</span>,
    });
  return (
    <Schedule
      class="schedule"
      caption={w.caption}
      rows={papers}
      keyOf={(row) => row.id}
      columns={[
        {
          title: common.learner,
          head: true,
          cell: (row) =>
            row.total ? (
              <a href={addressOf({ at: 'marked', set: id, paper: row.id, item: null })}>{row.name}</a>
            ) : (
              row.name
            ),
        },
        ...(attempts > 1
          ? [{ title: w.attempt, minor: true, like: 'number', cell: (row: PaperRow) => row.attempt }]
          : []),
        { title: w.code, minor: true, like: 'code', cell: (row) => codeInGroups(row.code) },
        { title: w.stands, cell: stands },
        { title: w.marks, like: 'number', cell: (row) => (row.total ? w.marksOf(row.total) : w.noMarks) },
        {
          title: w.perCent,
          own: (row) => <ShareCell share={row.total?.share ?? null} none={w.notMarked} />,
        },
      ]}
    />
  );
}

/** Everybody's papers: who has begun, who has handed in, what it came to. */
export function Papers({ view, round }: { view: SetView /** Another one: look again. */; round: number }) {
  const { papers: w, common } = words('sets');
  const { id } = view.set;
  const { fetched, again } = useFetched(id, () => call('homeworkPapers', { params: { set: id } }));
  const look = useRef(again);
  look.current = again;
  useEffect(() => {
    if (round > 0) look.current();
  }, [round]);
  return (
    <Show of={fetched} again={again}>
      {({ papers, waiting }) => (
        <section>
          {waiting > 0 && (
            <p role="status" class="row">
              <span>{w.stillBeingMarked(waiting)}</span>
              <Button kind="plain" onPress={again}>
                {common.lookAgain}
              </Button>
            </p>
          )}
          {papers.length > 0 && <PaperSchedule view={view} papers={papers} />}
        </section>
      )}
    </Show>
  );
}
