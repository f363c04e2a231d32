import { useState } from 'preact/hooks';
import { save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Failure } from '../../../forms/failure.tsx';
import { words } from '../../../words.ts';
import { fileName } from '../file-name.ts';
import type { PartProps } from '../part-props.ts';
import { TakeRoster } from './take-roster.tsx';

/** Slips for those who can't sign in by themselves yet, and the class as a file. */
function HandOut({ detail }: Pick<PartProps, 'detail'>) {
  const { roster: w, common, files } = words('classes');
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
      setSaid(common.filesKept);
    });
  };
  const roster = (format: 'csv' | 'oneroster', rest: string) => () =>
    give(() => save('giveRoster', fileName(detail.title, rest), { params, query: { format } }));
  return (
    <>
      <section>
        <h2>{w.slips.title}</h2>
        {without === 0 ? (
          <p>{w.slips.nobody}</p>
        ) : (
          <>
            <p>{w.slips.means(without)}</p>
            <p>
              <button
                type="button"
                class="button"
                disabled={act.busy}
                onClick={() =>
                  give(() => save('linkSlips', fileName(detail.title, files.links), { params, body: {} }))
                }
              >
                {common.makeSlips}
              </button>
            </p>
          </>
        )}
      </section>
      <section>
        <h2>{w.give.title}</h2>
        <p class="row">
          <button type="button" class="button" disabled={act.busy} onClick={roster('csv', files.table)}>
            {w.give.table}
          </button>
          <button
            type="button"
            class="button"
            disabled={act.busy}
            onClick={roster('oneroster', files.oneRoster)}
          >
            {w.give.oneRoster}
          </button>
        </p>
        <p role="status">{act.busy ? w.give.making : said}</p>
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
