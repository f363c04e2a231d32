import { useEffect, useRef } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { codeInGroups } from '../../../../homework/paper-code.ts';
import { call } from '../../../api.ts';
import { whenText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { shownMarks } from '../parts/item-verdict.tsx';
import { ShareCell } from '../parts/share-cell.tsx';
import { addressOf } from '../where.ts';

/** How a paper stands, in words. */
function standsText({ begunAt, submittedAt, markedAt, saved }: PaperRow, closed: boolean): string {
  if (submittedAt !== null) return `handed in ${whenText(submittedAt)}`;
  if (markedAt !== null) return 'closed with answers saved';
  if (closed) return saved > 0 ? 'closed with answers saved' : 'nothing handed in';
  if (begunAt === null) return 'not begun';
  return saved === 0 ? 'begun' : `working, ${saved === 1 ? '1 item' : `${saved} items`} answered`;
}

/** That circuits of the paper were to be marked or run elsewhere while it was open. */
const triedText = (items: number): string =>
  items === 1 ? '; tried 1 item elsewhere' : `; tried ${items} items elsewhere`;

/** Everybody's papers: who has begun, who has handed in, what it came to. */
export function Papers({ view, round }: { view: SetView /** Another one: look again. */; round: number }) {
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
              <span>
                {waiting} {waiting === 1 ? 'paper is' : 'papers are'} still being marked.
              </span>
              <button type="button" class="button plain" onClick={again}>
                Look again
              </button>
            </p>
          )}
          {papers.length > 0 && (
            <table class="schedule">
              <caption>Papers</caption>
              <thead>
                <tr>
                  <th scope="col">Learner</th>
                  {attempts > 1 && (
                    <th scope="col" class="minor">
                      Attempt
                    </th>
                  )}
                  <th scope="col" class="minor">
                    Code
                  </th>
                  <th scope="col">Stands</th>
                  <th scope="col">Marks</th>
                  <th scope="col">Per cent</th>
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
                      {row.attempt > 1 && <span class="narrow-only">attempt {row.attempt}, </span>}
                      {standsText(row, closed)}
                      {row.tried > 0 && <span class="tried">{triedText(row.tried)}</span>}
                    </td>
                    <td class="number">
                      {row.total ? `${shownMarks(row.total.earned)} of ${row.total.outOf}` : '–'}
                    </td>
                    <ShareCell share={row.total?.share ?? null} none="not marked" />
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
