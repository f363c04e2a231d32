import { useEffect, useRef } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { codeInGroups } from '../../../../homework/paper-code.ts';
import type { PaperStands } from '../../../../words/en/page/sets/papers.ts';
import { call } from '../../../api.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { set, words } from '../../../words.ts';
import { ShareCell } from '../parts/share-cell.tsx';
import { addressOf } from '../where.ts';

function standsOf({ begunAt, submittedAt, markedAt, saved }: PaperRow, closed: boolean): PaperStands {
  if (submittedAt !== null) return { kind: 'handed-in', at: submittedAt };
  if (markedAt !== null) return { kind: 'closed-with-answers' };
  if (closed) return { kind: saved > 0 ? 'closed-with-answers' : 'nothing-handed-in' };
  if (begunAt === null) return { kind: 'not-begun' };
  return saved === 0 ? { kind: 'begun' } : { kind: 'working', items: saved };
}

/** Everybody's papers: who has begun, who has handed in, what it came to. */
export function Papers({ view, round }: { view: SetView /** Another one: look again. */; round: number }) {
  const { papers: w, common } = words('sets');
  const { id, attempts } = view.set;
  const { fetched, again } = useFetched(id, () => call('homeworkPapers', { params: { set: id } }));
  const closed = view.state === 'closed';
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
              <button type="button" class="button plain" onClick={again}>
                {common.lookAgain}
              </button>
            </p>
          )}
          {papers.length > 0 && (
            <table class="schedule">
              <caption>{w.caption}</caption>
              <thead>
                <tr>
                  <th scope="col">{common.learner}</th>
                  {attempts > 1 && (
                    <th scope="col" class="minor">
                      {w.attempt}
                    </th>
                  )}
                  <th scope="col" class="minor">
                    {w.code}
                  </th>
                  <th scope="col">{w.stands}</th>
                  <th scope="col">{w.marks}</th>
                  <th scope="col">{w.perCent}</th>
                </tr>
              </thead>
              <tbody>
                {papers.map((row) => (
                  <tr key={row.id}>
                    <th scope="row">
                      {row.total ? (
                        <a href={addressOf({ at: 'marked', set: id, paper: row.id, item: null })}>
                          {row.name}
                        </a>
                      ) : (
                        row.name
                      )}
                    </th>
                    {attempts > 1 && <td class="number minor">{row.attempt}</td>}
                    <td class="code minor">{codeInGroups(row.code)}</td>
                    <td>
                      {set(
                        w.standsSo({
                          attempt: row.attempt,
                          stands: standsOf(row, closed),
                          tried: row.tried,
                        }),
                        {
                          attempt: (text) => <span class="narrow-only">{text}</span>,
                          tried: (text) => <span class="tried">{text}</span>,
                        },
                      )}
                    </td>
                    <td class="number">{row.total ? w.marksOf(row.total) : w.noMarks}</td>
                    <ShareCell share={row.total?.share ?? null} none={w.notMarked} />
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </section>
      )}
    </Show>
  );
}
