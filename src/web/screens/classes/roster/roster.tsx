import { useState } from 'preact/hooks';
import { save } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { Failure } from '../../enter/sheet.tsx';
import type { PartProps } from '../class.tsx';
import { fileName } from '../file-name.ts';
import { TakeRoster } from './take-roster.tsx';

/** Slips for those who can't sign in by themselves yet, and the class as a file. */
function HandOut({ detail }: Pick<PartProps, 'detail'>) {
  const act = useAct();
  const [said, setSaid] = useState('');
  const params = { class: detail.id };
  const without = detail.members.filter(
    ({ manner, hasPassword }) => manner === 'learner' && !hasPassword,
  ).length;
  const give = (work: () => Promise<void>): void => {
    setSaid('');
    act.run(async () => {
      await work();
      setSaid('The file is among your downloads.');
    });
  };
  const roster = (format: 'csv' | 'oneroster', rest: string) => () =>
    give(() => save('giveRoster', fileName(detail.title, rest), { params, query: { format } }));
  return (
    <>
      <section>
        <h2>Slips with links</h2>
        {without === 0 ? (
          <p>Everybody has a password: nobody needs a link.</p>
        ) : (
          <>
            <p>
              {without === 1 ? '1 learner has' : `${without} learners have`} no password yet. Each gets a slip
              with name and link; links handed over before stop working.
            </p>
            <p>
              <button
                type="button"
                class="button"
                disabled={act.busy}
                onClick={() =>
                  give(() => save('linkSlips', fileName(detail.title, 'links.pdf'), { params, body: {} }))
                }
              >
                Make the slips (PDF)
              </button>
            </p>
          </>
        )}
      </section>
      <section>
        <h2>Take the class along</h2>
        <p class="row">
          <button type="button" class="button" disabled={act.busy} onClick={roster('csv', 'class.csv')}>
            As one table (CSV)
          </button>
          <button
            type="button"
            class="button"
            disabled={act.busy}
            onClick={roster('oneroster', 'oneroster.zip')}
          >
            As OneRoster 1.1 (zip)
          </button>
        </p>
        <p role="status">{act.busy ? 'Making the file…' : said}</p>
        <Failure words={act.failure} />
      </section>
    </>
  );
}

/** Rosters, both ways. */
export function Roster(props: PartProps) {
  return (
    <>
      {props.detail.endedAt === null && <TakeRoster {...props} />}
      <HandOut detail={props.detail} />
    </>
  );
}
