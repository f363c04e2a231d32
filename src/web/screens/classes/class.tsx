import { useEffect, useState } from 'preact/hooks';
import type { ClassDetail } from '../../../../shared/people.ts';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { Failure } from '../../forms/failure.tsx';
import { words } from '../../words.ts';
import { AddByName } from './add-by-name.tsx';
import { Change } from './change.tsx';
import { classAddress, type Part } from './classes-route.ts';
import { Members } from './members/members.tsx';
import { Roster } from './roster/roster.tsx';
import { Slips } from './slips.tsx';

/** In the order in which they stand. */
const parts = { members: Members, slips: Slips, add: AddByName, roster: Roster, change: Change } as const;

function NotThere({ failure, onAgain }: { failure: string; onAgain: () => void }) {
  const { one: w, common } = words('classes');
  if (!failure) return <p role="status">{w.fetching}</p>;
  return (
    <>
      <h1>{w.class}</h1>
      <Failure words={failure} />
      <p class="row">
        <Button onPress={onAgain}>{common.tryAgain}</Button>
        <a href="#/classes">{w.all}</a>
      </p>
    </>
  );
}

/** Its title block: what it is called, the code, how many learn in it. */
function Head({ detail }: { detail: ClassDetail }) {
  const { one: w } = words('classes');
  return (
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
  );
}

/** One class: its people, the ways into it, and what else is done with it. */
export function Class({ id, part }: { id: string; part: Part }) {
  const { one: w } = words('classes');
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
        <NotThere failure={act.failure} onAgain={again} />
      </div>
    );
  const Shown = parts[part];
  return (
    <div class="classes">
      <Head detail={detail} />
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
