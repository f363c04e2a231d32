import { useState } from 'preact/hooks';
import { save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
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
  const slips = (): Promise<void> =>
    save('linkSlips', fileName(detail.title, files.links), { params, body: {} });
  const roster = (format: 'csv' | 'oneroster', rest: string) => (): Promise<void> =>
    save('giveRoster', fileName(detail.title, rest), { params, query: { format } });
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
              <Button busy={act.busy} onPress={() => give(slips)}>
                {common.makeSlips}
              </Button>
            </p>
          </>
        )}
      </section>
      <section>
        <h2>{w.give.title}</h2>
        <p class="row">
          <Button busy={act.busy} onPress={() => give(roster('csv', files.table))}>
            {w.give.table}
          </Button>
          <Button busy={act.busy} onPress={() => give(roster('oneroster', files.oneRoster))}>
            {w.give.oneRoster}
          </Button>
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
