import { useState } from 'preact/hooks';
import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import type { ProofsWanted } from '../../../../../shared/issued.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { dayOf } from '../../../parts/moment.ts';
import { set, words } from '../../../words.ts';
import { Head } from '../parts/head.tsx';
import type { Competence as Cell } from '../parts/types.ts';
import { addressOf } from '../where.ts';
import { namesOf } from './names.ts';
import { Refreshers } from './refreshers.tsx';
import { fileName } from './words.ts';

/** Days ahead that are shown first: what a tutor does something about. */
const SOON = 7;
const REACHABLE = { tabIndex: 0 } as const;

function CellOf({ cell }: { cell: Cell }) {
  const w = words('sets').competence.cells;
  if (cell.kind === 'not-yet')
    return <td class="stands not-yet">{cell.begun ? w.begun : <span class="away">{w.notYet}</span>}</td>;
  return (
    <td class={`stands ${cell.kind}`}>
      {w[cell.kind]}
      <span class="of">{dayOf(cell.provenAt)}</span>
    </td>
  );
}

const wantedIn = (value: string): ProofsWanted => (value === 'supervised' ? value : 'any');

/** What one person has proven, to be printed. */
function Evidence({ person, name, proofs }: { person: string; name: string; proofs: ProofsWanted }) {
  const w = words('sets').competence;
  const { busy, failure, run } = useAct();
  return (
    <>
      <button
        type="button"
        class="button plain"
        disabled={busy}
        onClick={() =>
          run(() =>
            save('evidencePdf', fileName(name, w.evidenceFile), { params: { person }, query: { proofs } }),
          )
        }
        aria-label={w.evidenceOf(name)}
      >
        {busy ? w.evidenceBusy : w.evidence}
      </button>
      {failure && <span role="alert">{failure}</span>}
    </>
  );
}

function Matrix({ view }: { view: CompetenceView }) {
  const w = words('sets').competence;
  const nameOf = namesOf(view.people);
  const { skills, rows } = view.matrix;
  return (
    <section class="grid-scroll" aria-label={w.byPeople} {...REACHABLE}>
      <table class="schedule grid">
        <caption>{w.byPeopleOn(view.matrix.at)}</caption>
        <thead>
          <tr>
            <th scope="col">{w.person}</th>
            {skills.map(({ id, title }) => (
              <th key={id} scope="col" class="on-end">
                <span>{title}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ person, cells }) => (
            <tr key={person}>
              <th scope="row">
                {nameOf(person)}
                <Evidence person={person} name={nameOf(person)} proofs={view.proofs} />
              </th>
              {cells.map((cell, at) => (
                <CellOf key={skills[at]?.id} cell={cell} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Who holds which skill, who is losing it, and whose refresher is due. */
export function Competence({ class: of }: { class: string }) {
  const { competence: w, common } = words('sets');
  const [days, setDays] = useState(SOON);
  const [proofs, setProofs] = useState<ProofsWanted>('any');
  const { fetched, again } = useFetched(`${of} ${days} ${proofs}`, () =>
    call('competence', { params: { class: of }, query: { days, proofs } }),
  );
  return (
    <div class="homework wide">
      <Head title={w.title} />
      <p>{set(w.means, { strong: (text) => <strong>{text}</strong> })}</p>
      <label class="field">
        {w.proofs}
        <select value={proofs} onChange={({ currentTarget }) => setProofs(wantedIn(currentTarget.value))}>
          <option value="any">{w.anyProof}</option>
          <option value="supervised">{w.supervisedOnly}</option>
        </select>
      </label>
      <Show of={fetched} again={again} waiting={common.reckoning}>
        {(view) => (
          <>
            <Matrix view={view} />
            <Refreshers view={view} days={days} onDays={setDays} />
            <p>
              <a href={addressOf({ at: 'sets', class: of })}>{common.setsOfClass}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
