import { useEffect, useState } from 'preact/hooks';
import type { ClassDetail } from '../../../../shared/people.ts';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { words } from '../../words.ts';
import { AddByName } from './add-by-name.tsx';
import { classAddress, type Part } from './at.ts';
import { Change } from './change.tsx';
import { Members } from './members/members.tsx';
import { Roster } from './roster/roster.tsx';
import { Slips } from './slips.tsx';

/** In the order in which they stand. */
const parts = { members: Members, slips: Slips, add: AddByName, roster: Roster, change: Change } as const;

/** One class: its people, the ways into it, and what else is done with it. */
export function Class({ id, part }: { id: string; part: Part }) {
  const { one: w, common } = words('classes');
  const [detail, setDetail] = useState<ClassDetail>();
  const act = useAct();
  const again = (): void => act.run(async () => setDetail(await call('class', { params: { class: id } })));
  useEffect(() => {
    again();
    // Once, when it appears; `again` is another function each time.
  }, []);
  if (!detail)
    return (
      <div class="classes">
        {act.failure ? (
          <>
            <h1>{w.class}</h1>
            <Failure words={act.failure} />
            <p class="row">
              <button type="button" class="button" onClick={again}>
                {common.tryAgain}
              </button>
              <a href="#/classes">{w.all}</a>
            </p>
          </>
        ) : (
          <p role="status">{w.fetching}</p>
        )}
      </div>
    );
  const Shown = parts[part];
  return (
    <div class="classes">
      <header class="class-head">
        <div>
          <p class="back">
            <a href="#/classes">{w.back}</a>
          </p>
          <h1>{detail.title}</h1>
          {detail.intake && <p class="intake">{detail.intake}</p>}
        </div>
        <p class="cell">
          <span>{w.joiningCode}</span>
          <strong>{detail.endedAt === null && detail.joiningOpen ? detail.joiningCode : w.closed}</strong>
        </p>
        <p class="cell">
          <span>{w.learners}</span>
          <strong>{detail.learners}</strong>
        </p>
      </header>
      {detail.endedAt !== null && <p class="caution">{w.ended}</p>}
      <nav class="parts" aria-label={w.partsOf}>
        {(Object.keys(parts) as Part[]).map((name) => (
          <a key={name} href={classAddress(id, name)} aria-current={name === part ? 'page' : undefined}>
            {w.parts[name]}
          </a>
        ))}
        <a href={`#/homework/class.${id}`}>{w.homework}</a>
      </nav>
      <Shown detail={detail} onDetail={setDetail} />
    </div>
  );
}
